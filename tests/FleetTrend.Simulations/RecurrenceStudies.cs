using FleetTrend.Statistics;
using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Simulations;

/// <summary>
/// Recurrences: units differ (gamma of shape 3), half enter late (age 100 to 900 h), each is followed for 500 to 2,000 h.
/// </summary>
internal static class RecurrenceStudies
{
    private const double RatePerHour = 2.0 / 1000;
    private const double Spread = 3;
    private const string FewUnits =
        "few units: the spread between them is itself estimated from few; the limits with Student's t are the better ones";

    public static IEnumerable<Study> All =>
    [
        .. new[] { 20, 60, 300 }.SelectMany(units => Enum.GetValues<McfLimits>().Select(limits => Mcf(units, limits))),
        .. new[] { 20, 60, 300 }.Select(units => Exponent(units, late: true)),
        .. new[] { 20, 60 }.Select(units => Exponent(units, late: false)),
    ];

    private static Study Mcf(int units, McfLimits limits) => new()
    {
        Quantity = "mean cumulative function at 1,000 h",
        Setting = $"{units} units, half entering late, frailty shape 3",
        Method = limits switch
        {
            McfLimits.Logarithmic => "robust, limits on the logarithm",
            McfLimits.LogarithmicStudent => "robust, on the logarithm with Student's t",
            _ => "robust, plain limits",
        },
        Reason = limits == McfLimits.LogarithmicStudent ? null : FewUnits,
        Draw = random =>
        {
            var fleet = Fleet(random, units, Spread, late: true);
            return MeanCumulativeFunction.Estimate(fleet, limits: limits).TryGetValue(out var mcf) && mcf.At(1000) is { } point
                ? [(new Interval(point.Lower, point.Upper), RatePerHour * 1000)]
                : [];
        },
    };

    private static Study Exponent(int units, bool late) => new()
    {
        Quantity = "power-law exponent",
        Setting = late ? $"{units} units alike, half entering late" : $"{units} units alike, from age zero",
        Method = late ? "profile likelihood" : "exact chi-square",
        Draw = random => PowerLawProcess.Fit(Fleet(random, units, double.PositiveInfinity, late)).TryGetValue(out var fit)
            ? [(fit.ExponentInterval, 1)]
            : [],
    };

    private static List<RecurrenceUnit> Fleet(Random random, int units, double shape, bool late)
    {
        var fleet = new List<RecurrenceUnit>(units);
        for (var i = 0; i < units; i++)
        {
            var start = late && i % 2 == 1 ? Draws.Between(random, 100, 900) : 0;
            var stop = start + Draws.Between(random, 500, 2000);
            var count = Draws.Count(random, RatePerHour * Draws.Frailty(random, shape) * (stop - start));
            fleet.Add(new RecurrenceUnit(start, stop, Enumerable.Range(0, count).Select(_ => stop - (stop - start) * random.NextDouble())));
        }
        return fleet;
    }
}
