namespace FleetTrend.Statistics.Norms;

/// <summary>
/// Sums over units and over j from zero to a unit's events less one, of terms that depend on j and the shape. Taken in runs of j with
/// the same number of units above: short runs and small j term by term, long ones by the Euler-Maclaurin formula, so that the cost does
/// not grow with the counts.
/// </summary>
/// <remarks>
/// Source: Euler-Maclaurin formula, Abramowitz and Stegun 1964, 23.1.30. The first term left out is below 1e-16 from
/// <see cref="SmallestStart"/> on.
/// </remarks>
internal sealed class UnitsAbove
{
    private const int SmallestStart = 64;
    private const int ShortRun = 24;

    private readonly List<Run> runs = [];

    internal UnitsAbove(IEnumerable<int> events)
    {
        var counts = events.Where(e => e > 0).Order().ToArray();
        var from = 0;
        for (var i = 0; i < counts.Length; i++)
        {
            if (counts[i] > from && from < SmallestStart && counts[i] > SmallestStart)
            {
                runs.Add(new Run(from, SmallestStart, counts.Length - i));
                from = SmallestStart;
            }
            if (counts[i] > from)
                runs.Add(new Run(from, counts[i], counts.Length - i));
            from = counts[i];
        }
    }

    /// <summary>Sum of ln(1 + j / shape).</summary>
    internal double Logarithms(double shape) => Sum(
        j => ElementaryFunctions.LogP1(j / shape),
        (a, b) => shape * (LogarithmIntegral(b / shape) - LogarithmIntegral(a / shape)),
        j => (1 / (shape + j), 2 / Cube(shape + j), 24 / (Cube(shape + j) * Square(shape + j))));

    /// <summary>Sum of j / (shape (shape + j)), the derivative of the one above with its sign turned.</summary>
    internal double Slopes(double shape) => Sum(
        j => j / (shape * (shape + j)),
        (a, b) => SlopeIntegral(b / shape) - SlopeIntegral(a / shape),
        j => (1 / Square(shape + j), 6 / Square(Square(shape + j)), 120 / Square(Cube(shape + j))));

    /// <summary>Sum of (shape / (shape + j))².</summary>
    internal double Squares(double shape) => Sum(
        j => Square(shape / (shape + j)),
        (a, b) => (b - a) * (shape / (shape + a)) * (shape / (shape + b)),
        j => (
            -2 * Square(shape / (shape + j)) / (shape + j),
            -24 * Square(shape / (shape + j)) / Cube(shape + j),
            -720 * Square(shape / (shape + j)) / (Cube(shape + j) * Square(shape + j))));

    /// <param name="term">The term at j.</param>
    /// <param name="integral">Its integral between two j.</param>
    /// <param name="derivatives">Its first, third and fifth derivative by j.</param>
    private double Sum(Func<double, double> term, Func<double, double, double> integral, Func<double, (double First, double Third, double Fifth)> derivatives)
    {
        var sum = 0.0;
        foreach (var run in runs)
        {
            var ofRun = 0.0;
            if (run.From < SmallestStart || run.To - run.From <= ShortRun)
            {
                for (var j = run.From; j < run.To; j++)
                    ofRun += term(j);
            }
            else
            {
                var (low, high) = (derivatives(run.From), derivatives(run.To));
                ofRun = integral(run.From, run.To) + (term(run.From) - term(run.To)) / 2
                    + (high.First - low.First) / 12 - (high.Third - low.Third) / 720 + (high.Fifth - low.Fifth) / 30240;
            }
            sum += run.Units * ofRun;
        }
        return sum;
    }

    /// <summary>(1 + u) ln(1 + u) - u, by its series where that would cancel.</summary>
    private static double LogarithmIntegral(double u) =>
        u < 0.1 ? Series(u, k => 1.0 / (k * (k - 1))) : (1 + u) * ElementaryFunctions.LogP1(u) - u;

    /// <summary>u - ln(1 + u), by its series where that would cancel.</summary>
    private static double SlopeIntegral(double u) => u < 0.1 ? Series(u, k => 1.0 / k) : u - ElementaryFunctions.LogP1(u);

    /// <summary>Alternating power series from u² on.</summary>
    private static double Series(double u, Func<int, double> coefficient)
    {
        const int terms = 18;
        var sum = 0.0;
        for (var k = terms; k >= 2; k--)
            sum = coefficient(k) - u * sum;
        return u * u * sum;
    }

    private static double Square(double x) => x * x;

    private static double Cube(double x) => x * x * x;

    private sealed record Run(int From, int To, int Units);
}
