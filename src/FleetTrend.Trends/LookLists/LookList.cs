using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Looks;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.OpenFindings;

namespace FleetTrend.Trends.LookLists;

/// <summary>
/// What to look at when an aircraft comes in next: every location of its layout in the order of the layout, with what was found there before, what was done,
/// and why it stands out. Nothing is left off because its rate is low. It is put together when it is asked for, from what the refresh has computed and the
/// aircraft's own observations of the same moment: stored for a fleet it would take as much room as all other results.
/// </summary>
public sealed record LookList
{
    /// <summary>
    /// From this chance on a part stands out. A choice: of parts that stand out for it, one in ten or more has then failed.
    /// </summary>
    public const double LeastChance = 0.1;

    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its base.</summary>
    public required string Base { get; init; }

    /// <summary>Its type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Latest time in service known; null where none is.</summary>
    public double? LatestHours { get; init; }

    /// <summary>The day of <see cref="LatestHours"/>.</summary>
    public DateOnly? LatestDate { get; init; }

    /// <summary>The day of its latest inspection; null where there is none.</summary>
    public DateOnly? LatestInspectionDate { get; init; }

    /// <summary>Confidence of the limits of chances.</summary>
    public required double Confidence { get; init; }

    /// <summary>Every location, in the order of the layout.</summary>
    public required IReadOnlyList<LookListLine> Lines { get; init; }

    /// <summary>Puts it together.</summary>
    /// <param name="aircraft">The aircraft as observed.</param>
    /// <param name="layout">The locations of its present layout, in the order of going round.</param>
    /// <param name="chances">Chances of its parts, of the same moment; null where it has none.</param>
    /// <param name="calls">Calls on this aircraft.</param>
    /// <param name="parameters">The choices.</param>
    public static LookList Build(
        AircraftObservations aircraft, IReadOnlyList<Location> layout, FailureChance? chances, IReadOnlyList<ProposedFlag> calls, TrendParameters parameters)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(parameters);
        var looks = aircraft.Looks.ToDictionary(l => l.Location, StringComparer.Ordinal);
        var events = aircraft.Events.ToLookup(e => e.Location, StringComparer.Ordinal);
        var watched = aircraft.Exposures.ToLookup(e => e.Location, StringComparer.Ordinal);
        var parts = aircraft.Lives.Where(l => l.Ending == LifeEnding.InService).ToLookup(l => l.Location, StringComparer.Ordinal);
        var chance = (chances?.Parts ?? []).ToDictionary(p => p.Location, StringComparer.Ordinal);
        return new LookList
        {
            Registration = aircraft.Registration,
            Base = aircraft.Base,
            TypeGroup = aircraft.TypeGroup,
            LatestHours = aircraft.Latest?.Hours.Value,
            LatestDate = aircraft.Latest?.Date,
            LatestInspectionDate = aircraft.LatestInspection?.Date,
            Confidence = chances?.Confidence ?? parameters.Confidence,
            Lines = [.. layout.Select(Describe)],
        };

        LookListLine Describe(Location location)
        {
            var look = looks.GetValueOrDefault(location.Path);
            List<LocationEvent> before = [.. events[location.Path].OrderByDescending(e => e.FoundDate).ThenByDescending(e => e.Found).ThenBy(e => e.Condition)];
            var life = parts[location.Path].MaxBy(l => l.StartDate);
            var part = life is null ? null : OnList(life, chance.GetValueOrDefault(location.Path));
            var line = new LookListLine
            {
                Location = location.Path,
                Kind = location.Kind.Name,
                LookFor = location.LookFor.Length > 0 ? location.LookFor : location.Kind.LookFor,
                Reasons = [],
                CalledFor = CalledFor(location.Path),
                Checks = [],
                IntervalHours = parameters.LookIntervalHoursOf(aircraft.TypeGroup, location.Kind.Name),
                LookHours = [.. watched[location.Path].SelectMany(e => e.LookHours).Select(h => h.Value).Distinct().Order()],
                LastLookDate = look?.LastDate,
                HoursSinceLook = look?.LastDate is { } day && aircraft.Hours.On(day) is { } then && aircraft.Latest is { } now
                    ? Math.Max(0, (now.Hours - then).Value) : null,
                PassedOverDate = look?.PassedOver?.Date,
                Before = [.. before.Select(e => See(aircraft, e))],
                Part = part,
                Evidence = Evidence(look, life),
            };
            return line with
            {
                Reasons = [.. Reasons(line, before)],
                Checks = [.. Worth(before).Select(e => e.Condition).Distinct().SelectMany(c => location.Kind.ChecksFor(c) ?? [])
                    .Distinct(StringComparer.Ordinal)],
            };
        }

        string? CalledFor(string path)
        {
            List<string> about = [.. calls.Where(c => c.Locations.Contains(path, StringComparer.Ordinal)).Select(LookListWords.About)
                .Distinct(StringComparer.Ordinal)];
            return about.Count == 0 ? null : string.Join(" and ", about);
        }
    }

    private static IEnumerable<LookReason> Reasons(LookListLine line, IReadOnlyList<LocationEvent> before)
    {
        if (before.Any(e => e.ClosedDate is null && OpenFinding.ComesFirst(e.Condition)))
            yield return LookReason.OpenFirst;
        if (before.Any(e => e.ClosedDate is null && !OpenFinding.ComesFirst(e.Condition)))
            yield return LookReason.Open;
        if (line.CalledFor is not null)
            yield return LookReason.Called;
        if (line.LastLookDate is null)
            yield return LookReason.NeverLookedAt;
        if (line.HoursSinceLook > line.IntervalHours)
            yield return LookReason.PastInterval;
        if (line.Before.Any(b => !b.IsOpen && b.ActionDate is { } done && !(line.LastLookDate > done)))
            yield return LookReason.NotSeenSinceAction;
        if (before.Any(CameBack))
            yield return LookReason.CameBack;
        if (line.Part?.Chance >= LeastChance)
            yield return LookReason.MayHaveFailed;
    }

    /// <summary>What checks are worth their while for: what is open, and what came back and is still the same part or place.</summary>
    private static IEnumerable<LocationEvent> Worth(IEnumerable<LocationEvent> before) => before.Where(e => e.ClosedDate is null || CameBack(e));

    private static bool CameBack(LocationEvent found) => found.Ordinal > 1 && found.RenewedAt is null;

    private static PartOnList OnList(ObservedLife life, PartChance? chance) =>
        new(life.SerialNumber, life.AgeNow?.Value, chance?.Chance, chance?.Lower, chance?.Upper);

    private static SeenBefore See(AircraftObservations aircraft, LocationEvent found) => new()
    {
        Condition = found.Condition,
        FoundDate = found.FoundDate,
        FoundHours = found.Found.Value,
        HoursSinceFound = aircraft.Latest is { } latest ? Math.Max(0, (latest.Hours - found.Found).Value) : 0,
        Millimetres = found.Sizes.Count > 0 ? found.Sizes[^1].Millimetres : null,
        Action = found.Actions.Count > 0 ? found.Actions[^1].Kind : null,
        ActionDate = found.Actions.Count > 0 ? found.Actions[^1].Date : null,
        ActionHours = found.Actions.Count > 0 ? found.Actions[^1].At.Value : null,
        IsOpen = found.ClosedDate is null,
        Evidence = found.Evidence,
    };

    private static IReadOnlyList<RecordKey> Evidence(LocationLooks? look, ObservedLife? life) =>
        [.. (look?.Evidence ?? []).Concat(look?.PassedOver?.Evidence ?? []).Concat(life?.Evidence ?? []).Distinct()];
}
