using FleetTrend.Observations.Lives;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartLives;

/// <summary>Life distributions per part kind: for the type group as a whole, and for each base in it.</summary>
public sealed class PartLifeAnalysis : Analysis<PartLifeTrend>
{
    private const string BasesDiffer = "the bases differ, so that no figure for all of them describes any";

    private const string Turnbull = "non-parametric maximum likelihood (Turnbull 1976)";

    /// <summary>Beyond so many different lives a tenth of an hour costs much time and shows nothing.</summary>
    private const int MostLivesToTheTenth = 2000;

    /// <summary>Makes the analysis.</summary>
    public PartLifeAnalysis()
        : base("part-lives")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(PartLifeTrend item) => new(Kind: item.Kind);

    /// <inheritdoc/>
    public override Headline HeadlineOf(PartLifeTrend item) => Headline.From(item.Base ?? "", item.Shown?.Median ?? item.FailureRate);

    /// <inheritdoc/>
    public override IReadOnlyList<PartLifeTrend> Settle(IReadOnlyList<PartLifeTrend> items, TestFamily tests, TrendParameters parameters)
    {
        List<PartLifeTrend> settled = [.. items.Select(t => t.Contrast is { } c ? t with { Contrast = BaseContrasts.Settle(c, tests, parameters) } : t)];
        return settled.Exists(t => t.Contrast is { IsDifferent: true })
            ? [.. settled.Select(t => t.Base is null ? WithoutTotal(t) : t)]
            : settled;
    }

    /// <inheritdoc/>
    protected override IEnumerable<PartLifeTrend> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        foreach (var trend in inputs.PartLives)
        {
            foreach (var test in BaseContrasts.Tests(trend.Contrast))
                tests.Add(test.PValue);
            yield return trend;
        }
    }

    /// <summary>Trends by kind and base, the whole group first; what the contrasts found is still to be settled.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="counts">Which lives take part.</param>
    internal static IEnumerable<PartLifeTrend> Fit(TypeGroupInputs inputs, Func<ObservedLife, bool> counts) => inputs.Aircraft
        .SelectMany(a => a.Lives)
        .Where(l => l.TypeGroup == inputs.TypeGroup && counts(l))
        .GroupBy(l => l.Kind.Name, StringComparer.Ordinal)
        .OrderBy(g => g.Key, StringComparer.Ordinal)
        .SelectMany(g => OfKind(inputs.TypeGroup, g.First().Kind, [.. g], inputs.Parameters));

    private static IEnumerable<PartLifeTrend> OfKind(string typeGroup, LocationKind kind, List<ObservedLife> lives, TrendParameters parameters)
    {
        parameters = parameters.For(typeGroup, kind.Name);
        var all = FittedLives.From(lives);
        var whole = Trend(typeGroup, kind, null, lives, all, parameters);
        List<(PartLifeTrend Trend, FittedLives Lives)> bases = [.. lives
            .GroupBy(l => l.Base, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => (Observed: (List<ObservedLife>)[.. g], g.Key, Fitted: FittedLives.From(g)))
            .Select(b => (Trend(typeGroup, kind, b.Key, b.Observed, b.Fitted, parameters), b.Fitted))];
        var law = LifeFits.Shown(bases.Select(b => b.Trend.Fits)) ?? whole.Shown?.Distribution ?? LifeDistributionFit.Weibull;
        var course = EarlyAndMedianContrast.Course(LifeFits.Family(law), all.Lives);
        yield return Shown(whole, whole.Shown?.Distribution, course, all, parameters);
        foreach (var (trend, here) in bases)
        {
            yield return Shown(trend, trend.Fits.Count > 0 ? law : null, course, here, parameters) with
            {
                Contrast = bases.Count < 2
                    ? null
                    : BaseContrasts.Compare(law, course, here, FittedLives.From(lives.Where(l => l.Base != trend.Base)), parameters),
            };
        }
    }

    private static PartLifeTrend Shown(
        PartLifeTrend trend, string? law, LifeModel course, FittedLives lives, TrendParameters parameters) => trend with
        {
            Law = law,
            EarlyFailures = LifeFigures.Early(
                EarlyFailures.Estimate(course, lives.Aircraft, parameters.LookIntervalHours, parameters.Confidence), lives, parameters),
        };

    /// <summary>Where bases differ, one law for all fits none of them: its share is between theirs at best, and its median is nobody's.</summary>
    private static PartLifeTrend WithoutTotal(PartLifeTrend whole) => whole with
    {
        BasesDiffer = true,
        Fits = [],
        Law = null,
        Curve = [],
        CurveMethod = $"no curve: {BasesDiffer}",
        EarlyFailures = null,
        NotEnoughData = BasesDiffer,
    };

    private static PartLifeTrend Trend(
        string typeGroup, LocationKind kind, string? atBase, List<ObservedLife> observed, FittedLives lives, TrendParameters parameters)
    {
        var fits = lives.Failures >= parameters.MinimumFailuresForFit ? LifeFits.Fit(lives, parameters) : [];
        var (curve, method) = Curve(lives);
        return new PartLifeTrend
        {
            TypeGroup = typeGroup,
            Kind = kind.Name,
            KindTitle = kind.Title,
            Base = atBase,
            Lives = lives.Count,
            Failures = lives.Failures,
            LateEntries = lives.LateEntries,
            AgeUnknown = observed.Count(l => l.Exclusion == LifeExclusion.AgeUnknown),
            OtherExcluded = observed.Count - lives.Count - observed.Count(l => l.Exclusion == LifeExclusion.AgeUnknown),
            FailedBeforeEntry = observed.Count(l => l.Exclusion == LifeExclusion.FailedBeforeEntry),
            NeverExamined = observed.Count(l => l.Exclusion == LifeExclusion.NeverExamined),
            FailedInNoHours = observed.Count(l => l.Exclusion == LifeExclusion.NoHours),
            FollowedFromHours = lives.FollowedFrom,
            FollowedToHours = lives.FollowedTo,
            FailureRate = Figures.Rate(lives.WatchedByAircraft, parameters.Confidence, "per 1,000 h on the part"),
            Curve = curve,
            CurveMethod = method,
            Fits = fits,
            NotEnoughData = fits.Count > 0 ? null : Reason(lives, parameters),
        };
    }

    private static (IReadOnlyList<LifeStep> Curve, string Method) Curve(FittedLives lives)
    {
        var isCoarse = lives.Lives.Count > MostLivesToTheTenth;
        var method = isCoarse ? $"{Turnbull}, ages widened to whole hours" : Turnbull;
        return TurnbullEstimate.Estimate(isCoarse ? lives.InWholeHours() : lives.Lives).Match(
            e => ((IReadOnlyList<LifeStep>)[.. e.Masses.Select(m => new LifeStep(m.Lower, Figures.Finite(m.Upper), m.Mass, m.Cdf))],
                e.ObservedFrom > 0 ? $"{method}, given survival to {NumberWords.Hours(e.ObservedFrom)}: no life was followed from younger" : method),
            reason => ([], $"no curve: {reason.Explanation}"));
    }

    private static string Reason(FittedLives lives, TrendParameters parameters) =>
        lives.Failures < parameters.MinimumFailuresForFit
            ? $"not enough data: {NumberWords.Count(lives.Failures, "failure", "failures")} among {NumberWords.Count(lives.Count, "life", "lives")}, "
              + $"and a fit needs {parameters.MinimumFailuresForFit}"
            : $"not enough data: {NumberWords.Count(lives.Failures, "failure", "failures")}, and no distribution has a finite best fit to them";
}
