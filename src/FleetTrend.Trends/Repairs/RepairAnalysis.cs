using FleetTrend.Statistics;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Trends.Repairs;

/// <summary>
/// Does the repair hold: by kind of location, condition and action, how many came back and when, with aircraft as clusters; and each two actions at the same
/// kind of location compared.
/// </summary>
public sealed class RepairAnalysis : Analysis<RepairTrend>
{
    private const string SharesMethod =
        "1 - exp(-H), Weibull between looks; aircraft independent and not their repairs: jackknife over aircraft on ln H, Student's t (Lipsitz, Dear and Zhao 1994)";

    private const string FewMethod =
        "known to have come back of those watched so long, exact limits for as many as their aircraft tell (Clopper and Pearson 1934; Korn and Graubard 1998)";

    /// <summary>Flight hours since the action by which repairs are counted.</summary>
    private static readonly double[] Marks = [100, 200, 400];

    /// <summary>Makes the analysis.</summary>
    public RepairAnalysis()
        : base("repairs")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(RepairTrend item) => new(Kind: item.Kind);

    /// <summary>Those with a difference first, then the most repairs.</summary>
    public override IEnumerable<RepairTrend> Order(IEnumerable<RepairTrend> items) => items
        .OrderByDescending(t => t.Comparisons.Any(c => c.Finding == RepairFinding.HoldsLonger))
        .ThenByDescending(t => t.Actions.Sum(a => a.Repairs))
        .ThenBy(t => t.TypeGroup, StringComparer.Ordinal).ThenBy(t => t.Kind, StringComparer.Ordinal).ThenBy(t => t.Condition);

    /// <inheritdoc/>
    public override IReadOnlyList<RepairTrend> Settle(IReadOnlyList<RepairTrend> items, TestFamily tests, TrendParameters parameters) =>
        [.. items.Select(t => t with { Comparisons = [.. t.Comparisons.Select(c => RepairComparisons.Settle(c, tests, parameters))] })];

    /// <inheritdoc/>
    protected override IEnumerable<RepairTrend> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        foreach (var alike in inputs.Aircraft.SelectMany(FollowedRepair.Find)
            .Where(r => r.TypeGroup == inputs.TypeGroup)
            .GroupBy(r => (r.Kind.Name, r.Condition))
            .OrderBy(g => g.Key.Name, StringComparer.Ordinal).ThenBy(g => g.Key.Condition))
        {
            List<RepairGroup> groups = [.. alike.GroupBy(r => r.Action)
                .Select(g => new RepairGroup(g.Key, [.. g]))
                .OrderByDescending(g => g.Repairs.Count).ThenBy(g => g.Action)];
            var comparisons = RepairComparisons.Compare(groups, inputs.Parameters);
            foreach (var p in comparisons.Select(c => c.PValue).OfType<double>())
                tests.Add(p);
            var kind = alike.First().Kind;
            yield return new RepairTrend
            {
                TypeGroup = inputs.TypeGroup,
                Kind = kind.Name,
                Title = kind.Title,
                Condition = alike.Key.Condition,
                Actions = [.. groups.Select(g => Describe(g, inputs.Parameters))],
                Comparisons = comparisons,
            };
        }
    }

    private static RepairedAction Describe(RepairGroup group, TrendParameters parameters) => new()
    {
        Action = group.Action,
        Repairs = group.Repairs.Count,
        Aircraft = group.Repairs.Select(r => r.Registration).Distinct(StringComparer.Ordinal).Count(),
        NotLookedAt = group.Repairs.Count(r => r.ForComparison() is null),
        CameBack = group.CameBack,
        FollowedHours = group.FollowedHours,
        Shares = Shares(group, parameters),
        Before = Figures.Rate(
            [.. group.Repairs.GroupBy(r => r.Registration, StringComparer.Ordinal)
                .Select(a => (a.Sum(r => r.FoundBefore), a.Sum(r => r.WatchedBefore.Tenths)))],
            parameters.Confidence, Figures.PerThousandLocationHours),
    };

    private static List<ShareBack> Shares(RepairGroup group, TrendParameters parameters)
    {
        var fitted = group.CameBack >= parameters.MinimumFailuresForFit
            ? SharesFailed.Estimate(LifeDistribution.Weibull, group.Lives, Marks, parameters.Confidence)
            : new NotEstimable(NotEstimableKind.TooFewEvents, group.CameBack, "Too few came back.");
        return [.. Marks.Select((hours, i) =>
        {
            var (share, method) = fitted.TryGetValue(out var shares) ? (shares[i], SharesMethod) : (Few(group, hours, parameters), FewMethod);
            var held = group.Repairs.Count(r => r.LastGood.Value >= hours);
            var known = group.Repairs.Count(r => r.Found is { } found && found.Value <= hours);
            return new ShareBack(hours, known, held, share is { } told && group.FollowedHours >= hours
                ? Figures.OfLives(told.Value, told.Interval, parameters.Confidence, "", group.CameBack, group.Followed, method)
                : new Figure
                {
                    Confidence = parameters.Confidence, Unit = "", Events = group.CameBack, Lives = group.Followed, Method = method,
                    NotEnoughData = "not enough data: none was looked at so long after",
                });
        })];
    }

    private static IntervalEstimate? Few(RepairGroup group, double hours, TrendParameters parameters) =>
        ClusteredShares.Estimate(group.KnownBy(hours), parameters.Confidence).TryGetValue(out var share) ? share : null;
}
