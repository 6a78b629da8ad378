using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Decisions;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.RenewalAges;

/// <summary>
/// The age at which renewing a kind of part costs least, and the longest look interval that keeps the chance of an undetected failure under a limit, by the
/// lives of similar parts. Neither exceeds what the maker or a regulation allows.
/// </summary>
public sealed class RenewalAgeAnalysis : Analysis<RenewalAge>
{
    /// <summary>Saving less than this share of the cost, even at the upper limit of the shape, renewal by age does not help.</summary>
    public const double LeastWorthwhile = 0.05;

    private const string Region = "limits: the least and the greatest in the region of shape and scale, aircraft independent and not their parts: jackknife, Student's t "
        + "(Meeker and Escobar 1998; Lipsitz, Dear and Zhao 1994)";

    private const string ShapeMethod = $"Weibull shape, maximum likelihood; {Region}";

    private const string AgeMethod = $"age replacement, least long-run cost per hour of a Weibull life (Barlow and Proschan 1965); {Region}";

    private const string LookMethod = $"inverse of the conditional failure probability of a Weibull life (IEC 61649); {Region}";

    /// <summary>More failures than this nobody waits for.</summary>
    private const int MostFailuresToTell = 1000;

    /// <summary>Makes the analysis.</summary>
    public RenewalAgeAnalysis()
        : base("renewal-ages")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(RenewalAge item) => new(Kind: item.Kind);

    /// <inheritdoc/>
    public override Headline? HeadlineOf(RenewalAge item) => item.CheapestAge is { } age ? Headline.From(item.Base ?? "", age) : null;

    /// <summary>Those where renewing helps first, the greatest saving first.</summary>
    public override IEnumerable<RenewalAge> Order(IEnumerable<RenewalAge> items) => items
        .OrderByDescending(a => a.Finding).ThenByDescending(a => a.Saved?.Value).ThenByDescending(a => a.Failures)
        .ThenBy(a => a.TypeGroup, StringComparer.Ordinal).ThenBy(a => a.Kind, StringComparer.Ordinal).ThenBy(a => a.Base, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<RenewalAge> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var laws = inputs.LifeLaws.All.ToLookup(l => l.Kind, StringComparer.Ordinal);
        foreach (var whole in inputs.PartLives.Where(t => t.Base is null))
        {
            var known = false;
            foreach (var law in laws[whole.Kind])
            {
                known = true;
                yield return Describe(Bare(inputs, whole, law.Base, law.Failures, law.Lives), law, inputs.Parameters);
            }

            if (!known)
            {
                yield return Bare(inputs, whole, null, whole.Failures, whole.Lives) with
                {
                    NotEnoughData = whole.NotEnoughData ?? $"not enough data: {NumberWords.Count(whole.Failures, "failure", "failures")} at bases that differ",
                };
            }
        }
    }

    private static RenewalAge Bare(TypeGroupInputs inputs, PartLifeTrend kind, string? atBase, int failures, int lives) => new()
    {
        TypeGroup = inputs.TypeGroup,
        Kind = kind.Kind,
        Title = kind.KindTitle ?? kind.Kind,
        Base = atBase,
        Failures = failures,
        Lives = lives,
        CostRatio = inputs.Parameters.FailureCostRatio,
        AllowedChance = inputs.Parameters.UndetectedFailureChance,
        SetLookHours = inputs.Parameters.LookIntervalHoursOf(inputs.TypeGroup, kind.Kind),
        MakerRenewalHours = inputs.Parameters.GreatestRenewalHoursOf(inputs.TypeGroup, kind.Kind),
        MakerLookHours = inputs.Parameters.GreatestLookHoursOf(inputs.TypeGroup, kind.Kind),
        Finding = RenewalFinding.NotKnown,
    };

    private static RenewalAge Describe(RenewalAge bare, LifeLaw law, TrendParameters parameters)
    {
        var lives = law.Behind!;
        var isWeibull = law.Distribution == LifeDistributionFit.Weibull;
        var found = WeibullRegion.Estimate(lives.Aircraft, parameters.Confidence, isWeibull ? law.Fit : null);
        if (!found.TryGetValue(out var region))
        {
            return bare with
            {
                NotEnoughData = lives.Aircraft.Count(a => a.Any(l => l.Failed)) == 1
                    ? $"not enough data: all {NumberWords.Count(lives.Failures)} failures are on one aircraft"
                    : found.Reason?.Kind == NotEstimableKind.NoInformation
                    ? $"not enough data: {NumberWords.Count(lives.Failures, "failure leaves", "failures leave")} the life wide open"
                    : $"not enough data: {NumberWords.Count(lives.Failures, "failure", "failures")} that one aircraft alone decides about",
            };
        }

        return Looks(Renewal(bare, region, lives, parameters), region, lives, parameters) with { BetterLaw = isWeibull ? null : law.Distribution };
    }

    private static RenewalAge Renewal(RenewalAge bare, WeibullRegion region, FittedLives lives, TrendParameters parameters)
    {
        var told = bare with { Shape = Figure(new IntervalEstimate(region.Life.Shape, region.Shape), "", ShapeMethod, lives, parameters) };
        if (SavedAtBest(new WeibullLife(Math.Min(region.Shape.Upper, WeibullRegion.SteepestShape), region.Life.Scale), bare.CostRatio) < LeastWorthwhile)
            return told with { Finding = RenewalFinding.DoesNotWearOut };
        var best = region.Limits(l => AgeReplacement.Optimum(l, 1, bare.CostRatio).Age);
        var cheapest = double.IsFinite(best.Value)
            ? LifeFigures.Age(best, lives, parameters, AgeMethod)
            : Figure(best, "h", AgeMethod, lives, parameters) with { NotEnoughData = "running to failure costs least, by the estimate" };
        var helps = region.Shape.Lower > 1 && cheapest.Value is { } age && Saved(region, age, bare.CostRatio).Interval.Lower > 0;
        if (!helps)
            return told with { Finding = RenewalFinding.NotShown, CheapestAge = cheapest, FailuresToTell = FailuresToTell(region) };
        var used = Math.Min(cheapest.Value!.Value, bare.MakerRenewalHours ?? double.PositiveInfinity);
        return told with
        {
            Finding = RenewalFinding.Renew,
            CheapestAge = cheapest,
            AgeHours = used,
            Saved = Figure(Saved(region, used, bare.CostRatio), "", AgeMethod, lives, parameters),
        };
    }

    private static RenewalAge Looks(RenewalAge told, WeibullRegion region, FittedLives lives, TrendParameters parameters)
    {
        var until = told.AgeHours ?? Math.Min(lives.OldestAge, told.MakerRenewalHours ?? double.PositiveInfinity);
        if (!(until > 0))
            return told;
        var longest = region.Limits(l => Statistics.Decisions.LookInterval.LongestEqual(l, until, told.AllowedChance));
        var set = Math.Min(told.SetLookHours, until);
        // With a rising hazard the last interval is the worst, with a falling one the first.
        var chance = region.Limits(l => Math.Max(l.FailsWithin(0, set), l.FailsWithin(until - set, set)));
        return told with
        {
            LookedAtUntilHours = until,
            LongestLook = Figure(longest, "h", LookMethod, lives, parameters),
            LookHours = Math.Min(longest.Value, told.MakerLookHours ?? double.PositiveInfinity),
            ChanceAtSet = Figure(chance, "", LookMethod, lives, parameters),
        };
    }

    /// <summary>Share of the cost of running to failure that renewing at an age saves.</summary>
    private static IntervalEstimate Saved(WeibullRegion region, double age, double costRatio) =>
        region.Limits(l => 1 - (AgeReplacement.CostPerHourAt(l, 1, costRatio, age) * l.Mean / costRatio));

    private static double SavedAtBest(WeibullLife life, double costRatio)
    {
        var best = AgeReplacement.Optimum(life, 1, costRatio);
        return 1 - (best.CostPerHour / best.RunToFailureCostPerHour);
    }

    /// <summary>Limits of ln shape close in as the root of the failures.</summary>
    private static int? FailuresToTell(WeibullRegion region)
    {
        if (!(region.Life.Shape > 1 && region.Shape.Lower <= 1))
            return null;
        var shortfall = Math.Log(region.Life.Shape / region.Shape.Lower) / Math.Log(region.Life.Shape);
        var needed = region.Failures * shortfall * shortfall;
        return needed <= MostFailuresToTell ? (int)Math.Ceiling(needed) : null;
    }

    private static Figure Figure(IntervalEstimate estimate, string unit, string method, FittedLives lives, TrendParameters parameters) =>
        Figures.OfLives(estimate.Value, estimate.Interval, parameters.Confidence, unit, lives.Failures, lives.Count, method);
}
