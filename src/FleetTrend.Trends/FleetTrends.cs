using FleetTrend.Observations;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Layouts;
using FleetTrend.Trends.Airframes;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Groups;
using FleetTrend.Trends.Locations;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends;

/// <summary>Computes what the fleet is doing from the observations of its aircraft.</summary>
public static class FleetTrends
{
    /// <summary>Trends as of a moment. The same observations in any order and parameters give the same snapshot.</summary>
    /// <param name="fleet">The observed fleet; its aircraft in any order.</param>
    /// <param name="parameters">The choices.</param>
    /// <param name="codeVersion">Version of the code, stored for the record.</param>
    /// <exception cref="ArgumentException">An aircraft appears twice.</exception>
    public static TrendSnapshot Compute(FleetObservations fleet, TrendParameters parameters, string codeVersion)
    {
        ArgumentNullException.ThrowIfNull(fleet);
        ArgumentNullException.ThrowIfNull(parameters);
        List<AircraftObservations> aircraft = [.. fleet.Aircraft.OrderBy(o => o.Registration, StringComparer.Ordinal)];
        var twice = aircraft.GroupBy(a => a.Registration, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
            throw new ArgumentException($"Aircraft {twice.Key} appears twice.", nameof(fleet));

        var confidence = parameters.Confidence;
        var groups = TypeGroupObservations.Sort(aircraft);
        var baseOf = aircraft.ToDictionary(a => a.Registration, a => a.Base, StringComparer.Ordinal);
        var lives = aircraft.SelectMany(a => a.Lives).ToList();
        var repeats = RepeatLocations.Of(aircraft, groups);
        var snapshot = new TrendSnapshot
        {
            AsOf = fleet.AsOf.ToUniversalTime(),
            Parameters = parameters,
            CodeVersion = codeVersion,
            Fleet = [.. FleetLines.Of(aircraft, DateOnly.FromDateTime(fleet.AsOf.UtcDateTime))],
            Rates = [.. groups.SelectMany(g => RateTrends.Of(g, confidence))],
            Recurrences = [.. groups.SelectMany(g => RecurrenceTrends.Of(g, confidence))],
            Repeats = repeats,
            RecurrenceContrasts = RecurrenceContrasts.Of(repeats, groups, confidence),
            LocationStandings = LocationStandings.Of(groups, baseOf, confidence, FlagRestarts.None),
            PartLives = PartLifeTrends.Of(lives, parameters),
            Airframes = AirframeStandings.Of(groups, baseOf, confidence, FlagRestarts.None),
            Flags = [],
            Problems = [.. InOrder(aircraft.SelectMany(a => a.Problems).Concat(fleet.OtherProblems))],
        };
        // Standings, rates and lives show the whole past; what was closed is settled for the flags alone.
        var restarts = FlagRestarts.At(fleet.FlagClosings, aircraft);
        var counted = !restarts.Any ? snapshot : snapshot with
        {
            Repeats = [.. snapshot.Repeats.Select(r => RepeatLocations.After(r, restarts)).OfType<RepeatLocation>()],
            LocationStandings = LocationStandings.Of(groups, baseOf, confidence, restarts),
            PartLives = lives.TrueForAll(restarts.Counts) ? snapshot.PartLives : PartLifeTrends.Of(lives.Where(restarts.Counts), parameters),
            Airframes = AirframeStandings.Of(groups, baseOf, confidence, restarts),
        };
        return snapshot with { Flags = ProposedFlags.Of(counted, KindsOf(aircraft), restarts) };
    }

    private static Dictionary<string, LocationKind> KindsOf(IReadOnlyList<AircraftObservations> aircraft) => aircraft
        .SelectMany(a => a.Exposures.Select(e => e.Kind).Concat(a.Events.Select(e => e.Kind)).Concat(a.Lives.Select(l => l.Kind)))
        .DistinctBy(k => k.Name, StringComparer.Ordinal)
        .ToDictionary(k => k.Name, StringComparer.Ordinal);

    private static IEnumerable<DataProblem> InOrder(IEnumerable<DataProblem> problems) => problems
        .OrderBy(p => p.Registration, StringComparer.Ordinal)
        .ThenBy(p => p.Date)
        .ThenBy(p => p.Kind)
        .ThenBy(p => p.Description, StringComparer.Ordinal)
        .ThenBy(p => string.Join('|', p.Evidence), StringComparer.Ordinal);
}
