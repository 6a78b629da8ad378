using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Recurrences;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Recurrences;

/// <summary>Mean cumulative functions of a type group: what a kind is watched for, other cracks once seen, the rest once seen twice.</summary>
public sealed class RecurrenceAnalysis : Analysis<RecurrenceTrend>
{
    private const string Method =
        "mean cumulative function over aircraft by time in service, events at the hours found (Nelson 1995); "
        + "robust standard error (Lawless and Nadeau 1995), limits on the logarithm";

    private const string OneAircraft =
        "mean cumulative function of one aircraft by time in service, events at the hours found (Nelson 1995); "
        + "standard error from the count alone, as if events were a Poisson process, limits on the logarithm";

    /// <summary>Makes the analysis.</summary>
    public RecurrenceAnalysis()
        : base("recurrences")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(RecurrenceTrend item) => new(Location: item.Location, Kind: item.Kind);

    /// <inheritdoc/>
    protected override IEnumerable<RecurrenceTrend> Find(TypeGroupInputs inputs, ICollection<double> tests) =>
        from location in inputs.Observations.Locations
        from condition in Conditions(location)
        let trend = Trend(inputs.TypeGroup, location, condition, inputs.Parameters.Confidence)
        where trend is not null
        select trend;

    private static IEnumerable<Condition> Conditions(LocationObservations location)
    {
        foreach (var condition in location.Conditions.Union(location.Kind.Watched).Order())
        {
            var least = condition == Condition.Crack ? 1 : 2;
            if (location.Kind.Watched.Contains(condition) || location.Aircraft.Sum(a => a.Count(condition)) >= least)
                yield return condition;
        }
    }

    private static RecurrenceTrend? Trend(string typeGroup, LocationObservations location, Condition condition, double confidence)
    {
        var (function, method) = Mean(location.Aircraft, condition, confidence);
        if (function is null)
            return null;
        return new RecurrenceTrend
        {
            TypeGroup = typeGroup,
            Location = location.Location,
            Kind = location.Kind.Name,
            Condition = condition,
            AircraftCount = function.Units,
            Events = checked((int)function.Events),
            Points = Points(function),
            Watched = Watched(function),
            Method = method,
        };
    }

    /// <summary>The mean cumulative function of some aircraft at a place, and its method; null where none of them was watched.</summary>
    internal static (MeanCumulativeFunction? Function, string Method) Mean(
        IReadOnlyList<AircraftAtLocation> aircraft, Condition condition, double confidence)
    {
        var units = aircraft.Select(a => Unit(a, condition)).ToList();
        return MeanCumulativeFunction.Estimate(units, confidence).TryGetValue(out var function)
            ? (function, function.Variance == McfVariance.Robust ? Method : OneAircraft)
            : (null, Method);
    }

    /// <summary>The function as points.</summary>
    internal static IReadOnlyList<MeanCumulativePoint> Points(MeanCumulativeFunction function) =>
        [.. function.Points.Select(p => new MeanCumulativePoint(p.Time, p.AtRisk, p.Events, p.Value, p.StandardError, p.Lower, p.Upper))];

    /// <summary>The hours in which at least one aircraft was watched: from the first to the last, without the gaps between.</summary>
    internal static IReadOnlyList<WatchedSpan> Watched(MeanCumulativeFunction function)
    {
        var starts = function.Unwatched.Select(gap => gap.Stop).Prepend(function.From);
        var ends = function.Unwatched.Select(gap => gap.Start).Append(function.To);
        return [.. starts.Zip(ends, (from, to) => new WatchedSpan(from, to))];
    }

    /// <summary>An aircraft at a place as a unit of such a function.</summary>
    internal static RecurrenceUnit Unit(AircraftAtLocation aircraft, Condition condition) => new(
        aircraft.Windows.Select(w => new ObservationWindow(w.From.Value, w.To.Value)),
        aircraft.Counted(condition).Select(e => e.Found.Value));
}
