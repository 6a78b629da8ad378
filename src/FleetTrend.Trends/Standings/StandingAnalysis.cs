using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Statistics.Norms;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Standings;

/// <summary>Each aircraft against the others of its type group, for every condition that the group has had.</summary>
public sealed class StandingAnalysis : Analysis<AirframeStanding>
{
    private const string Method =
        "observed over expected at the rate of the other aircraft of the type group, location by location; exact conditional limits "
        + "(Przyborowski and Wilenski 1940; Breslow and Day 1987)";

    /// <summary>Makes the analysis.</summary>
    public StandingAnalysis()
        : base("airframe-standings")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(AirframeStanding item) => new(Registration: item.Registration, Base: item.Base);

    /// <inheritdoc/>
    public override Headline HeadlineOf(AirframeStanding item) => Headline.From(item.Condition.ToString(), item.Ratio);

    /// <inheritdoc/>
    public override IReadOnlyList<AirframeStanding> Settle(IReadOnlyList<AirframeStanding> items, TestFamily tests, TrendParameters parameters) =>
        [.. items.Select(s => s with { QValue = tests.QValue(s.PValue.Value) })];

    /// <inheritdoc/>
    protected override IEnumerable<AirframeStanding> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        foreach (var standing in inputs.Standings.OrderBy(s => s.Registration, StringComparer.Ordinal).ThenBy(s => s.Condition))
        {
            tests.Add(standing.PValue.Value);
            yield return standing;
        }
    }

    /// <summary>Standings of a group, with q-values still to be settled.</summary>
    /// <param name="inputs">The type group.</param>
    internal static IEnumerable<AirframeStanding> Compare(TypeGroupInputs inputs) => inputs.Observations.Conditions.SelectMany(c => Compare(inputs, c));

    private static IEnumerable<AirframeStanding> Compare(TypeGroupInputs inputs, Condition condition)
    {
        var (group, confidence) = (inputs.Observations, inputs.Parameters.Confidence);
        var locations = group.Where(condition).ToList();
        // A location without any event of the group adds nothing to what is observed or expected.
        var strata = locations
            .Where(l => l.Aircraft.Any(a => a.Count(condition) > 0))
            .Select(l => l.Stratum(condition))
            .ToList();
        var othersCount = locations.SelectMany(l => l.Aircraft).Where(a => a.ExposureTenths > 0)
            .Select(a => a.Registration).Distinct(StringComparer.Ordinal).Count() - 1;
        var watched = locations.SelectMany(l => l.Aircraft).Where(a => a.ExposureTenths > 0)
            .GroupBy(a => a.Registration, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(a => a.ExposureTenths), StringComparer.Ordinal);
        var since = locations.SelectMany(l => l.Aircraft)
            .SelectMany(a => a.Counted(condition))
            .GroupBy(e => e.Registration, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Min(e => e.FoundDate), StringComparer.Ordinal);
        var inNoRate = locations.SelectMany(l => l.Aircraft)
            .SelectMany(a => a.Events.Where(e => e.Condition == condition && !a.IsCounted(e)))
            .ToLookup(e => e.Registration, StringComparer.Ordinal);
        foreach (var standing in LeaveOneOutTest.Test(strata).Standings)
        {
            yield return new AirframeStanding
            {
                Registration = standing.Unit,
                Base = inputs.BaseOf(standing.Unit),
                TypeGroup = group.TypeGroup,
                Condition = condition,
                Observed = standing.Observed,
                PresentAtEntry = inNoRate[standing.Unit].Count(e => e.PresentAtEntry),
                NotWatched = inNoRate[standing.Unit].Count(e => !e.PresentAtEntry),
                Expected = standing.Expected,
                Expectation = Figures.Expected(standing.Contributions, confidence),
                ExposureHours = watched[standing.Unit] / 10.0,
                OthersCount = othersCount,
                OthersEvents = checked((int)standing.Contributions.Sum(c => c.OthersEvents)),
                Ratio = Ratio(standing, watched[standing.Unit] / 10.0, confidence),
                PValue = PValue.Exact(standing.UpperPValue),
                QValue = 1,
                Drivers = Drivers(group, standing, confidence),
                SinceDate = since.TryGetValue(standing.Unit, out var date) ? date : null,
            };
        }
    }

    private static Figure Ratio(UnitStanding standing, double exposureHours, double confidence)
    {
        var figure = new Figure
        {
            Confidence = confidence,
            Unit = "",
            Events = standing.Observed,
            ExposureHours = exposureHours,
            Method = Method,
        };
        return StandardisedRatio.Estimate(standing, confidence).Match(
            r => figure with
            {
                Value = Figures.Finite(r.Ratio),
                Lower = r.Interval.Lower,
                Upper = Figures.Finite(r.Interval.Upper),
                NotEnoughData = double.IsFinite(r.Ratio)
                    ? null
                    : Figures.OthersHadNone,
            },
            reason => figure with { NotEnoughData = $"not enough data: {NumberWords.Count(reason.Events, "event", "events")}" });
    }

    private static List<LocationShare> Drivers(TypeGroupObservations group, UnitStanding standing, double confidence) =>
        [.. standing.Contributions
            .Where(c => c.Excess > 0)
            .OrderByDescending(c => c.Excess)
            .ThenBy(c => c.Stratum, StringComparer.Ordinal)
            .Select(c => (Share: c, Expected: Figures.Expected([c], confidence)))
            .Select(c => new LocationShare(
                c.Share.Stratum, group.At(c.Share.Stratum).Kind.Name, c.Share.Observed, c.Share.Expected, c.Share.ExposureHours,
                c.Expected.Lower, c.Expected.Upper))];
}
