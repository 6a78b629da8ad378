using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>The mean of a law in one unit's spans, and where its events lie, at any growth.</summary>
/// <remarks>
/// Under either law a span's mean is an integral of exp(growth · s): s is the time itself (log-linear) or its logarithm (power law). Over a span with
/// middle c and
/// half width h that is exp(growth c) sinh(growth h) / growth; from time zero on the power law gives exp(growth s) / growth.
/// </remarks>
internal sealed class GrowthLikelihood
{
    private readonly Term[] terms;

    public GrowthLikelihood(IEnumerable<GrowthSpan> spans, GrowthLaw law)
    {
        terms = [.. spans.Select(s => Term.Of(s, law))];
        Events = terms.Sum(t => t.Events);
    }

    /// <summary>Events of the unit.</summary>
    public int Events { get; }

    /// <summary>What the unit adds at a growth.</summary>
    public GrowthSlopes At(double growth)
    {
        var (most, count) = (double.NegativeInfinity, terms.Length);
        Span<double> logs = count <= 256 ? stackalloc double[count] : new double[count];
        for (var i = 0; i < count; i++)
            most = Math.Max(most, logs[i] = terms[i].LogMean(growth));
        var (sum, first, square, bends, eventSlope, eventBend) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            var (slope, bend) = terms[i].Slopes(growth);
            var weight = Math.Exp(logs[i] - most);
            sum += weight;
            first += weight * slope;
            square += weight * slope * slope;
            bends += weight * bend;
            eventSlope += terms[i].Events * slope;
            eventBend += terms[i].Events * bend;
        }

        return new GrowthSlopes(Events, eventSlope, eventBend, most + Math.Log(sum), first / sum, square / sum, bends / sum);
    }

    /// <summary>A span in s.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Term(double LogWeight, double Middle, double Half, int Events)
    {
        private const double Small = 1e-3;

        public static Term Of(GrowthSpan span, GrowthLaw law)
        {
            var length = span.Stop - span.Start;
            if (law == GrowthLaw.LogLinear)
                return new Term(Math.Log(span.Exposure), (span.Start + span.Stop) / 2, length / 2, span.Events);
            var density = Math.Log(span.Exposure / length);
            if (span.Start == 0)
                return new Term(density, Math.Log(span.Stop), double.PositiveInfinity, span.Events);
            var half = Math.Log(span.Stop / span.Start) / 2;
            return new Term(density + Math.Log(2 * half), Math.Log(span.Stop) - half, half, span.Events);
        }

        public double LogMean(double growth)
        {
            if (double.IsInfinity(Half))
                return LogWeight + (growth * Middle) - Math.Log(growth);
            var x = growth * Half;
            return LogWeight + (growth * Middle) + LogSinhOver(Math.Abs(x));
        }

        public (double Slope, double Bend) Slopes(double growth)
        {
            if (double.IsInfinity(Half))
                return (Middle - (1 / growth), 1 / (growth * growth));
            var x = growth * Half;
            if (Math.Abs(x) < Small)
                return (Middle + (Half * x / 3), Half * Half / 3);
            var sinh = Math.Sinh(x);
            return (Middle + (Half * ((1 / Math.Tanh(x)) - (1 / x))), Half * Half * ((1 / (x * x)) - (1 / (sinh * sinh))));
        }

        private static double LogSinhOver(double x) =>
            x < Small ? x * x / 6 : x + Math.Log(-ElementaryFunctions.ExpM1(-2 * x) / (2 * x));
    }
}
