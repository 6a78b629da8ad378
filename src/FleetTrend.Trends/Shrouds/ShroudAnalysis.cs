using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Looks;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.Shrouds;

/// <summary>Stop drills per heat shroud with the hours to renewal, and clamp bolts by the state of their hex.</summary>
public sealed class ShroudAnalysis : Analysis<ShroudTrend>
{
    private const string Method =
        "1 - exp(-H), Weibull from the first stop drill to the renewal, those in service followed until now; aircraft independent and not their shrouds: jackknife over aircraft "
        + "on ln H, Student's t (Lipsitz, Dear and Zhao 1994)";

    private static readonly double[] Marks = [200, 500, 1000];

    /// <summary>Makes the analysis.</summary>
    public ShroudAnalysis()
        : base("shrouds")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(ShroudTrend item) => new();

    /// <inheritdoc/>
    protected override IEnumerable<ShroudTrend> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        List<StopDrilledShroud> shrouds = [.. inputs.Aircraft.SelectMany(a => StopDrilledShroud.Find(a, inputs.TypeGroup))];
        List<(AircraftObservations Aircraft, LocationLooks Looks, LocationEvent? Worst)> bolts =
        [
            .. inputs.Present.Where(a => a.RetiredDate is null)
                .SelectMany(a => a.Looks.Where(l => l.Kind.Name == ShippedKinds.ClampBolt).Select(l => (a, l, WorstAt(a, l.Location)))),
        ];
        if (shrouds.Count == 0 && bolts.Count == 0)
            yield break;
        var flying = inputs.Present.Where(a => a.RetiredDate is null).Select(a => a.Registration).ToHashSet(StringComparer.Ordinal);
        List<StopDrilledShroud> renewed = [.. shrouds.Where(s => s.IsRenewed)];
        yield return new ShroudTrend
        {
            TypeGroup = inputs.TypeGroup,
            Shrouds = shrouds.Count,
            Renewed = renewed.Count,
            StopDrillsAtRenewal = renewed.Count == 0 ? null : renewed.Average(s => s.StopDrills),
            FewestHours = renewed.Count == 0 ? null : renewed.Min(s => s.Hours),
            MostHours = renewed.Count == 0 ? null : renewed.Max(s => s.Hours),
            Shares = Shares(shrouds, renewed.Count, inputs.Parameters),
            StopDrilled = [.. shrouds.Where(s => !s.IsRenewed && flying.Contains(s.Registration))
                .OrderByDescending(s => s.StopDrills).ThenByDescending(s => s.Hours).ThenBy(s => s.Registration, StringComparer.Ordinal)
                .ThenBy(s => s.Shroud, StringComparer.Ordinal)],
            Bolts = [.. bolts.Select(b => (Bolt: b, State: StateOf(b.Looks, b.Worst), Age: AgeOf(b.Aircraft, b.Looks.Location)))
                .GroupBy(b => b.State).OrderBy(g => g.Key)
                .Select(g => new HexCount(
                    g.Key, g.Count(), g.Select(b => b.Bolt.Aircraft.Registration).Distinct(StringComparer.Ordinal).Count(), g.Average(b => b.Age)))],
            BadBolts = [.. bolts.Where(b => b.Worst is not null).Select(b => Describe(b.Aircraft, b.Looks, b.Worst!))
                .OrderByDescending(b => b.State).ThenByDescending(b => b.HoursSince).ThenBy(b => b.Registration, StringComparer.Ordinal)
                .ThenBy(b => b.Location, StringComparer.Ordinal)],
        };
    }

    private static List<ShareRenewed> Shares(List<StopDrilledShroud> shrouds, int renewed, TrendParameters parameters)
    {
        // A shroud that has not flown since its first stop drill tells nothing of hours.
        IReadOnlyList<IReadOnlyList<Life>> units = [.. shrouds.Where(s => s.Hours > 0).GroupBy(s => s.Registration, StringComparer.Ordinal)
            .Select(g => (IReadOnlyList<Life>)[.. g.Select(s => s.IsRenewed ? Life.FailedAt(s.Hours) : Life.GoodAt(s.Hours))])];
        var shares = renewed >= parameters.MinimumFailuresForFit
            && SharesFailed.Estimate(LifeDistribution.Weibull, units, Marks, parameters.Confidence).TryGetValue(out var told) ? told : null;
        var (lives, longest) = (units.Sum(u => u.Count), shrouds.Select(s => s.Hours).DefaultIfEmpty().Max());
        return [.. Marks.Select((hours, i) => new ShareRenewed(
            hours, shrouds.Count(s => s.IsRenewed && s.Hours <= hours), shrouds.Count(s => s.Hours > hours),
            shares is not null && longest >= hours
                ? Figures.OfLives(shares[i].Value, shares[i].Interval, parameters.Confidence, "", renewed, lives, Method)
                : new Figure
                {
                    Confidence = parameters.Confidence,
                    Unit = "",
                    Events = renewed,
                    Lives = lives,
                    Method = Method,
                    NotEnoughData = longest >= hours
                        ? $"not enough data: {NumberWords.Count(renewed)} of {NumberWords.Count(shrouds.Count)} renewed"
                        : "not enough data: none was followed so long",
                }))];
    }

    private static BadBolt Describe(AircraftObservations aircraft, LocationLooks looks, LocationEvent worst) => new()
    {
        Registration = aircraft.Registration,
        Base = aircraft.Base,
        Location = looks.Location,
        State = StateOf(looks, worst),
        FoundDate = worst.FoundDate,
        HoursSince = aircraft.Latest is { } latest && latest.Hours > worst.Found ? (latest.Hours - worst.Found).Value : 0,
        AgeHours = AgeOf(aircraft, looks.Location),
        Evidence = worst.Evidence,
    };

    private static LocationEvent? WorstAt(AircraftObservations aircraft, string location) => aircraft.Events
        .Where(e => e.Location == location && e.ClosedDate is null)
        .OrderByDescending(e => StateOf(e.Condition)).ThenBy(e => e.FoundDate)
        .FirstOrDefault();

    private static HexState StateOf(LocationLooks looks, LocationEvent? worst) =>
        worst is not null ? StateOf(worst.Condition) : looks.LookCount == 0 ? HexState.NeverLookedAt : HexState.Good;

    private static HexState StateOf(Condition condition) => condition switch
    {
        Condition.Corrosion => HexState.Corroded,
        Condition.Wear => HexState.Worn,
        Condition.Erosion => HexState.Eroded,
        _ => HexState.OtherFinding,
    };

    private static double? AgeOf(AircraftObservations aircraft, string location) =>
        aircraft.Lives.LastOrDefault(l => l.Location == location && l.Ending == LifeEnding.InService)?.AgeNow?.Value;
}
