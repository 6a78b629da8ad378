using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Cox's partial likelihood of two groups in b, the logarithm of the second's rate over the first's: at each event age the chance that the
/// events fell where they did, given who was at risk.
/// </summary>
/// <remarks>Source: Cox 1972; Andersen and Gill 1982; ties Breslow 1974, Efron 1977.</remarks>
internal sealed class PartialLikelihood(IEnumerable<PartialLikelihood.Age> ages, TieHandling ties)
{
    private readonly Age[] ages = [.. ages.Where(a => a is { FirstAtRisk: > 0, SecondAtRisk: > 0 })];

    /// <summary>Events of the first group while both groups were watched.</summary>
    internal double FirstEvents => ages.Sum(a => a.FirstEvents);

    /// <summary>Events of the second group while both groups were watched.</summary>
    internal double SecondEvents => ages.Sum(a => a.SecondEvents);

    /// <summary>The likelihood is concave: where its slope crosses zero is its one maximum.</summary>
    /// <returns>The maximum; null where all events fell in one group, when it lies at infinity.</returns>
    internal double? Maximise()
    {
        if (!(FirstEvents > 0 && SecondEvents > 0)) return null;
        return RootSearch.Find(b => At(b).Score, -60, 60);
    }

    /// <summary>Slope and minus the curvature at b.</summary>
    internal (double Score, double Information) At(double b)
    {
        var (score, information) = (0.0, 0.0);
        foreach (var age in ages)
        {
            var events = age.FirstEvents + age.SecondEvents;
            score += age.SecondEvents;
            if (ties == TieHandling.Breslow)
            {
                var share = Share(age.FirstAtRisk, age.SecondAtRisk, b);
                score -= events * share;
                information += events * share * (1 - share);
                continue;
            }

            for (var k = 0; k < events; k++)
            {
                var share = Share(age.FirstAtRisk - (k / events * age.FirstEvents), age.SecondAtRisk - (k / events * age.SecondEvents), b);
                score -= share;
                information += share * (1 - share);
            }
        }

        return (score, information);
    }

    /// <summary>Share of the second group in the rate of all at risk.</summary>
    internal static double Share(double first, double second, double b) => 1 / (1 + (first / second * Math.Exp(-b)));

    /// <summary>One event age: at risk and events by group.</summary>
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct Age(double Time, double FirstAtRisk, double SecondAtRisk, double FirstEvents, double SecondEvents);
}
