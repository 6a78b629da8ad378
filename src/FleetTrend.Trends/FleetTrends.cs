using FleetTrend.Observations;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Layouts;
using FleetTrend.Trends.Flags;

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
        var groups = fleet.Aircraft.SelectMany(a => a.TypeGroups.Select(g => (Group: g, Aircraft: a)))
            .GroupBy(g => g.Group, g => g.Aircraft, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => TypeGroupTrends.Compute(
                new TypeGroupInputs(g.Key, g, fleet.AsOf, parameters)
                {
                    FlagClosings = fleet.FlagClosings,
                    PracticeChanges = fleet.PracticeChanges,
                    StockCounts = fleet.StockCounts,
                },
                Analyses.All));
        return Assemble(
            fleet.AsOf, parameters, codeVersion, [.. groups], fleet.OtherProblems, KindsIn(fleet.Aircraft), fleet.FlagClosings);
    }

    /// <summary>Puts the trends of all type groups together.</summary>
    /// <param name="asOf">The moment of knowledge.</param>
    /// <param name="parameters">The choices.</param>
    /// <param name="codeVersion">Version of the code.</param>
    /// <param name="groups">The type groups, by name.</param>
    /// <param name="otherProblems">Problems of the fleet as a whole.</param>
    /// <param name="kinds">Every kind of location, by name.</param>
    /// <param name="closings">The newest closing of each flag.</param>
    public static TrendSnapshot Assemble(
        DateTimeOffset asOf, TrendParameters parameters, string codeVersion, IReadOnlyList<TypeGroupTrends> groups,
        IEnumerable<DataProblem> otherProblems, IReadOnlyDictionary<string, LocationKind> kinds, IReadOnlyList<Records.Flags.FlagClosing> closings)
    {
        ArgumentNullException.ThrowIfNull(groups);
        return new TrendSnapshot
        {
            AsOf = asOf.ToUniversalTime(),
            Parameters = parameters,
            CodeVersion = codeVersion,
            Fleet = [.. Settled(Analyses.Fleet)],
            Rates = [.. Settled(Analyses.Rates)],
            Recurrences = [.. Settled(Analyses.Recurrences)],
            Repeats = [.. Settled(Analyses.Repeats)],
            RecurrenceContrasts = [.. Settled(Analyses.RecurrenceContrasts)],
            PartLives = [.. Settled(Analyses.PartLives)],
            PartNumbers = [.. Settled(Analyses.PartNumbers)],
            Levels = [.. Settled(Analyses.Levels)],
            OpenFindings = [.. Settled(Analyses.OpenFindings)],
            DueLooks = [.. Settled(Analyses.DueLooks)],
            FailureChances = [.. Settled(Analyses.FailureChances)],
            ChanceCalibrations = [.. Settled(Analyses.ChanceCalibrations)],
            Repairs = [.. Settled(Analyses.Repairs)],
            LeakErosions = [.. Settled(Analyses.LeakErosions)],
            RenewalAges = [.. Settled(Analyses.RenewalAges)],
            Growth = [.. Settled(Analyses.Growth)],
            Spares = [.. Settled(Analyses.Spares)],
            Positions = [.. Settled(Analyses.Positions)],
            Shrouds = [.. Settled(Analyses.Shrouds)],
            Effects = [.. Settled(Analyses.Effects)],
            Scores = [.. Settled(Analyses.Scores)],
            Quiet = [.. Settled(Analyses.Quiet)],
            Silences = [.. Settled(Analyses.Silence)],
            Flags = ProposedFlags.Propose([.. groups.Select(g => g.Candidates)], parameters, kinds, closings),
            DataProblems = [.. Analyses.DataProblems.Order(Settled(Analyses.DataProblems).Concat(otherProblems))],
        };

        IEnumerable<T> Settled<T>(Analysis<T> analysis)
            where T : notnull
        {
            var tests = new TestFamily(groups.Select(g => g.Results.First(r => r.Analysis == analysis).Tests));
            return analysis.Order(groups.SelectMany(g => g.Find(analysis)).SelectMany(items => analysis.Settle(items, tests, parameters)));
        }
    }

    private static Dictionary<string, LocationKind> KindsIn(IEnumerable<AircraftObservations> aircraft) => aircraft
        .SelectMany(a => a.Exposures.Select(e => e.Kind).Concat(a.Events.Select(e => e.Kind)).Concat(a.Lives.Select(l => l.Kind)))
        .DistinctBy(k => k.Name, StringComparer.Ordinal)
        .ToDictionary(k => k.Name, StringComparer.Ordinal);
}
