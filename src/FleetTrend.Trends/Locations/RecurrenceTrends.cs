using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Recurrences;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Locations;

/// <summary>Mean cumulative functions of a type group: cracks where they are watched for or seen, others seen at least twice.</summary>
internal static class RecurrenceTrends
{
    private const string Method =
        "mean cumulative function over aircraft by time in service, events at the hours found (Nelson 1995); "
        + "robust standard error (Lawless and Nadeau 1995), limits on the logarithm";

    private const string OneAircraft =
        "mean cumulative function of one aircraft by time in service, events at the hours found (Nelson 1995); "
        + "standard error from the count alone, as if events were a Poisson process, limits on the logarithm";

    /// <summary>The functions of a group, by location, then condition.</summary>
    public static IEnumerable<RecurrenceTrend> Of(TypeGroupObservations group, double confidence) =>
        from location in @group.Locations
        from condition in Conditions(location)
        let trend = Trend(@group.TypeGroup, location, condition, confidence)
        where trend is not null
        select trend;

    private static IEnumerable<Condition> Conditions(LocationObservations location)
    {
        foreach (var condition in location.Conditions.Append(Condition.Crack).Distinct().Order())
        {
            var events = location.Aircraft.Sum(a => a.Count(condition));
            if (condition == Condition.Crack ? events > 0 || RateTrends.IsCrackWatched(location.Kind) : events > 1)
                yield return condition;
        }
    }

    private static RecurrenceTrend? Trend(string typeGroup, LocationObservations location, Condition condition, double confidence)
    {
        var units = location.Aircraft.Select(a => Unit(a, condition)).ToList();
        if (!MeanCumulativeFunction.Estimate(units, confidence).TryGetValue(out var function))
            return null;
        return new RecurrenceTrend
        {
            TypeGroup = typeGroup,
            Location = location.Location,
            Kind = location.Kind,
            Condition = condition,
            AircraftCount = function.Units,
            Events = checked((int)function.Events),
            Points = [.. function.Points.Select(p => new MeanCumulativePoint(
                p.Time, p.AtRisk, p.Events, p.Value, p.StandardError, p.Lower, p.Upper))],
            Method = function.Variance == McfVariance.Robust ? Method : OneAircraft,
        };
    }

    private static RecurrenceUnit Unit(AircraftAtLocation aircraft, Condition condition) => new(
        aircraft.Windows.Select(w => new ObservationWindow(w.From.Value, w.To.Value)),
        aircraft.Counted(condition).Select(e => e.Found.Value));
}
