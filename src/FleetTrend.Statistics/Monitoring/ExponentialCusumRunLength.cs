using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// Average number of gaps until a cumulative sum on exponential gaps signals. The average run as a function of the starting
/// sum has kinks a reference value apart; between them it is smooth and is found as a polynomial, to about ten digits.
/// </summary>
public static class ExponentialCusumRunLength
{
    private const int Nodes = 16;
    private const int KinksThatMatter = 12;
    private const double LongestPiece = 4;
    private const double MostGrowthInPiece = 6;
    private const double MostGrowth = 300;
    private const double LargestLimit = 100;

    private static readonly GaussLegendreRule Rule = new(-1, 1, Nodes);
    private static readonly double[] Barycentric = BarycentricWeights();

    /// <summary>The average run, the signalling gap included.</summary>
    /// <param name="meanGap">True mean of the gaps, hours, above zero.</param>
    /// <param name="reference">Reference value, hours, above zero.</param>
    /// <param name="limit">Limit, hours, above zero and at most a hundred mean gaps; the sum signals at it or above.</param>
    /// <param name="direction">What the sum watches for.</param>
    /// <param name="headStart">Start of the sum, hours, zero or more and below the limit.</param>
    /// <returns>The average; <see cref="NotEstimableKind.DidNotConverge"/> where it is beyond 10^100 gaps.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>
    /// Source: the integral equation of Page 1954, Biometrika 41, for the problem of Vardeman and Ray 1985, Technometrics 27,
    /// solved by piecewise collocation.
    /// </remarks>
    public static Outcome<double> Mean(
        double meanGap, double reference, double limit, GapDirection direction = GapDirection.Shorter, double headStart = 0)
    {
        ExponentialCusum.CheckPositive(meanGap, nameof(meanGap));
        ExponentialCusum.CheckPositive(reference, nameof(reference));
        ExponentialCusum.CheckPositive(limit, nameof(limit));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(limit, LargestLimit * meanGap);
        ArgumentOutOfRangeException.ThrowIfNegative(headStart);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(headStart, limit);

        var (k, h) = (reference / meanGap, limit / meanGap);
        var growth = direction == GapDirection.Shorter ? Growth(k) : 0;
        if (growth * h > MostGrowth)
            return new NotEstimable(NotEstimableKind.DidNotConverge, 0, "The average run is too long to be computed: beyond 10^100 gaps.");
        var breaks = Breaks(k, h, Math.Min(LongestPiece, MostGrowthInPiece / growth), direction);
        var nodes = breaks.Zip(breaks.Skip(1)).SelectMany(piece => Rule.Abscissas.Select(x => At(piece.First, piece.Second, x))).ToArray();
        return new RestartedRun(nodes, start => Moves(start, k, breaks, direction), start => Signals(start, k, h, direction))
            .From(headStart / meanGap);
    }

    /// <summary>Chance of a signal at once.</summary>
    private static double Signals(double start, double k, double h, GapDirection direction) => direction == GapDirection.Shorter
        ? ElementaryFunctions.OneMinusExp(Math.Max(0, start + k - h))
        : Math.Exp(start - k - h);

    /// <summary>
    /// The exponent by which the chance of a signal grows with the sum: zero of log(1 + x) - k x. Within a piece that chance
    /// must not grow by more than polynomials can follow.
    /// </summary>
    private static double Growth(double k) =>
        k >= 1 ? 0 : RootSearch.Find(x => ElementaryFunctions.LogP1(x) - k * x, 1 - k, 4 / (k * k));

    /// <summary>Ends of the pieces: zero, the limit, the kinks nearest to where they are sharp, and no piece too long.</summary>
    private static double[] Breaks(double k, double h, double longest, GapDirection direction)
    {
        var kinks = Enumerable.Range(1, KinksThatMatter).Select(j => direction == GapDirection.Shorter ? h - j * k : j * k);
        double[] sharp = [0, .. kinks.Where(b => b > 1e-9 * h && b < h * (1 - 1e-9)).Order(), h];
        var breaks = new List<double> { 0 };
        foreach (var end in sharp.Skip(1))
        {
            var start = breaks[^1];
            var parts = Math.Max(1, (int)Math.Ceiling((end - start) / longest));
            for (var part = 1; part <= parts; part++)
                breaks.Add(part == parts ? end : start + (end - start) * part / parts);
        }
        return [.. breaks];
    }

    /// <summary>Where the sum goes from a start: the weight of each node's value in the mean over what follows, zero apart.</summary>
    private static Vector<double> Moves(double start, double k, double[] breaks, GapDirection direction)
    {
        var row = new double[Nodes * (breaks.Length - 1)];
        var shorter = direction == GapDirection.Shorter;
        var low = shorter ? 0 : Math.Max(0, start - k);
        var high = shorter ? Math.Min(breaks[^1], start + k) : breaks[^1];
        for (var piece = 0; piece + 1 < breaks.Length; piece++)
        {
            var (from, to) = (Math.Max(low, breaks[piece]), Math.Min(high, breaks[piece + 1]));
            if (to <= from)
                continue;
            for (var point = 0; point < Nodes; point++)
            {
                var y = At(from, to, Rule.GetAbscissa(point));
                var density = shorter ? Math.Exp(y - start - k) : Math.Exp(start - k - y);
                AddBasis(
                    row.AsSpan(piece * Nodes, Nodes), (2 * y - breaks[piece] - breaks[piece + 1]) / (breaks[piece + 1] - breaks[piece]),
                    Rule.GetWeight(point) * (to - from) / 2 * density);
            }
        }
        return Vector<double>.Build.Dense(row);
    }

    /// <summary>Adds a weight times the value, at x in [-1, 1], of each node's polynomial (one at its node, zero at the others).</summary>
    private static void AddBasis(Span<double> row, double x, double weight)
    {
        Span<double> terms = stackalloc double[Nodes];
        var sum = 0.0;
        for (var i = 0; i < Nodes; i++)
        {
            var distance = x - Rule.GetAbscissa(i);
            if (Math.Abs(distance) < 1e-14)
            {
                row[i] += weight;
                return;
            }
            terms[i] = Barycentric[i] / distance;
            sum += terms[i];
        }
        for (var i = 0; i < Nodes; i++)
            row[i] += weight * terms[i] / sum;
    }

    private static double[] BarycentricWeights()
    {
        var weights = new double[Nodes];
        for (var i = 0; i < Nodes; i++)
        {
            weights[i] = 1;
            for (var j = 0; j < Nodes; j++)
            {
                if (j != i)
                    weights[i] /= Rule.GetAbscissa(i) - Rule.GetAbscissa(j);
            }
        }
        return weights;
    }

    private static double At(double from, double to, double x) => (from + to) / 2 + (to - from) / 2 * x;
}
