using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.PartNumbers;

/// <summary>
/// Whether parts of one number last longer, or fail early less often, than those of another of the same kind; aircraft, which may have carried both, are
/// clusters.
/// </summary>
public sealed class PartNumberAnalysis : Analysis<PartNumberTrend>
{
    /// <summary>Makes the analysis.</summary>
    public PartNumberAnalysis()
        : base("part-numbers")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(PartNumberTrend item) => new(Kind: item.Kind);

    /// <summary>Those with a difference first, then the most part numbers.</summary>
    public override IEnumerable<PartNumberTrend> Order(IEnumerable<PartNumberTrend> items) => items
        .OrderByDescending(t => t.Comparisons.Any(c => c.Finding == PartNumberFinding.Better))
        .ThenByDescending(t => t.Numbers.Count)
        .ThenBy(t => t.TypeGroup, StringComparer.Ordinal).ThenBy(t => t.Kind, StringComparer.Ordinal);

    /// <inheritdoc/>
    public override IReadOnlyList<PartNumberTrend> Settle(IReadOnlyList<PartNumberTrend> items, TestFamily tests, TrendParameters parameters) =>
        [.. items.Select(t => t with { Comparisons = [.. t.Comparisons.Select(c => PartNumberComparisons.Settle(c, tests, parameters))] })];

    /// <inheritdoc/>
    protected override IEnumerable<PartNumberTrend> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        foreach (var kind in inputs.Aircraft.SelectMany(a => a.Lives)
            .Where(l => l.TypeGroup == inputs.TypeGroup)
            .GroupBy(l => l.Kind.Name, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            List<PartNumberGroup> groups = [.. kind.Where(l => l.PartNumber is not null)
                .GroupBy(l => l.PartNumber!, StringComparer.Ordinal)
                .Select(g => new PartNumberGroup(g.Key, [.. g]))
                .OrderByDescending(g => g.Fitted.Count).ThenBy(g => g.PartNumber, StringComparer.Ordinal)];
            if (groups.Count == 0)
                continue;
            var parameters = inputs.Parameters.For(inputs.TypeGroup, kind.Key);
            var law = inputs.PartLives.FirstOrDefault(t => t.Kind == kind.Key && t.Base is null)?.Law ?? LifeDistributionFit.Weibull;
            var distribution = LifeFits.Family(law);
            var course = EarlyAndMedianContrast.Course(distribution, FittedLives.From(kind).Lives);
            var comparisons = PartNumberComparisons.Compare(distribution, course, groups, parameters);
            foreach (var p in comparisons.Select(c => c.PValue).OfType<double>())
                tests.Add(p);
            yield return new PartNumberTrend
            {
                TypeGroup = inputs.TypeGroup,
                Kind = kind.Key,
                Title = kind.First().Kind.Title,
                NotTold = kind.Count(l => l.PartNumber is null && l.Exclusion is null),
                Numbers = [.. groups.Select(g => Describe(g, course, parameters))],
                Comparisons = comparisons,
            };
        }
    }

    private static PartNumberLives Describe(PartNumberGroup group, LifeModel course, TrendParameters parameters) => new()
    {
        PartNumber = group.PartNumber,
        Lives = group.Fitted.Count,
        Failures = group.Fitted.Failures,
        Aircraft = group.ByAircraft.Count,
        NotCounted = group.Observed - group.Fitted.Count,
        FailureRate = Figures.Rate(group.Fitted.WatchedByAircraft, parameters.Confidence, "per 1,000 h on the part"),
        EarlyFailures = LifeFigures.Early(
            EarlyFailures.Estimate(course, group.Fitted.Aircraft, parameters.LookIntervalHours, parameters.Confidence), group.Fitted, parameters),
    };
}
