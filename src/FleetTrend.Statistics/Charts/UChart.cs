using FleetTrend.Statistics.Norms;
using MathNet.Numerics;

namespace FleetTrend.Statistics.Charts;

/// <summary>
/// Control chart of events per unit of exposure, each unit with limits for its own exposure; with equal exposures it is the
/// chart of counts (c chart). Units are judged against a rate in which they are themselves counted:
/// <see cref="LeaveOneOutTest"/> does not do that.
/// </summary>
public sealed record UChart
{
    private UChart(double rate, double width, IReadOnlyList<UChartPoint> points)
    {
        Rate = rate;
        Width = width;
        Points = points;
    }

    /// <summary>Centre line: events over exposure of all units.</summary>
    public double Rate { get; }

    /// <summary>Width of the limits in Poisson standard deviations.</summary>
    public double Width { get; }

    /// <summary>One point per unit with exposure, in the order given.</summary>
    public IReadOnlyList<UChartPoint> Points { get; }

    /// <summary>Draws the chart.</summary>
    /// <param name="units">Units in order; those without exposure have no point.</param>
    /// <param name="width">Width of the limits in Poisson standard deviations, above zero.</param>
    /// <returns>
    /// The chart; <see cref="NotEstimableKind.NothingObserved"/> without exposure, <see cref="NotEstimableKind.NoEvents"/>
    /// without events, where every limit would be zero.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The width is not finite and above zero.</exception>
    /// <remarks>
    /// Source: NIST/SEMATECH e-Handbook 6.3.3.1 (counts; limits at the mean plus and minus three of its roots); the same per
    /// unit of exposure is the standard u chart.
    /// </remarks>
    public static Outcome<UChart> Draw(IReadOnlyList<CountExposure> units, double width = 3)
    {
        if (!(width > 0) || double.IsInfinity(width))
            throw new ArgumentOutOfRangeException(nameof(width), width, "The width is finite and above zero.");
        var events = units.Sum(u => (long)u.Events);
        var exposure = units.Sum(u => u.Exposure);
        if (exposure == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit had exposure.");
        if (events == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No unit had an event: every limit would be zero.");

        var rate = events / exposure;
        var points = new List<UChartPoint>(units.Count);
        for (var i = 0; i < units.Count; i++)
        {
            if (units[i].Exposure > 0)
                points.Add(Point(i, units[i], rate, width));
        }
        return new UChart(rate, width, points);
    }

    private static UChartPoint Point(int position, CountExposure unit, double rate, double width)
    {
        var mean = rate * unit.Exposure;
        var deviation = Math.Sqrt(rate / unit.Exposure);
        var upper = unit.Events == 0 ? 1 : SpecialFunctions.GammaLowerRegularized(unit.Events, mean);
        var same = unit.Events == 0
            ? Math.Exp(-mean)
            : Math.Exp(unit.Events * Math.Log(mean) - mean - SpecialFunctions.GammaLn(unit.Events + 1.0));
        return new UChartPoint
        {
            Position = position,
            Unit = unit,
            LowerLimit = Math.Max(0, rate - width * deviation),
            UpperLimit = rate + width * deviation,
            Deviations = (unit.Events / unit.Exposure - rate) / deviation,
            UpperPValue = upper,
            MidUpperPValue = Math.Max(0, upper - same / 2),
        };
    }
}
