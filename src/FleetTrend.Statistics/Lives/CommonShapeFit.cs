namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Groups of lives fitted with one shape and a scale each: how many times longer one group lives than another, at every share failed.
/// </summary>
/// <remarks>
/// ln life = mu of the group + sigma times a standard variable, sigma shared: the accelerated-failure-time model with a factor. For the
/// Weibull it is also a proportional-hazards model, with hazard ratio (scale ratio)^-shape.
/// Source: Meeker and Escobar 1998, section 8.3 (profile limits) and chapter 17 (regression); Wilks 1938 (the two tests).
/// </remarks>
public sealed class CommonShapeFit
{
    private readonly CommonShapeSearch search;
    private readonly CommonShapeSearch.Top top;

    private CommonShapeFit(LifeDistribution distribution, CommonShapeSearch search, CommonShapeSearch.Top top, double confidence)
    {
        this.search = search;
        this.top = top;
        Distribution = distribution;
        Confidence = confidence;
        Scales = [.. top.Mus.Select(Math.Exp)];
    }

    /// <summary>The family.</summary>
    public LifeDistribution Distribution { get; }

    /// <summary>Confidence of every interval.</summary>
    public double Confidence { get; }

    /// <summary>Shape that the groups share, 1/sigma.</summary>
    public double Shape => Math.Exp(top.Tau);

    /// <summary>Standard error of the shape, from the observed information.</summary>
    public double ShapeStandardError => Shape * Math.Sqrt(top.VarianceOfTau);

    /// <summary>Scale of each group, hours, in the order given.</summary>
    public IReadOnlyList<double> Scales { get; }

    /// <summary>Maximised log-likelihood.</summary>
    public double LogLikelihood => top.Value;

    /// <summary>Lives in all groups.</summary>
    public long Lives => search.Lives;

    /// <summary>Failures in all groups.</summary>
    public long Failures => search.Failures;

    /// <summary>Test of one scale for all against a scale each, the shape shared: do the groups differ. Source: Wilks 1938.</summary>
    public required LikelihoodRatio EqualScales { get; init; }

    /// <summary>
    /// Test of the shared shape against a shape each: does the model fit. A reason where a group alone has no fit. Source: Wilks 1938.
    /// </summary>
    public required Outcome<LikelihoodRatio> EqualShapes { get; init; }

    /// <summary>The distribution of one group.</summary>
    /// <param name="group">Its index, from zero.</param>
    public LifeModel Model(int group) => new(Distribution, Scales[group], Shape);

    /// <summary>
    /// Scale of one group over that of another, and so the ratio of their lives at every share failed, with its profile-likelihood
    /// interval; an end that the data do not limit is 0 or infinite. Source: see the type's remarks.
    /// </summary>
    /// <param name="over">Index of the group above, from zero.</param>
    /// <param name="under">Index of the group below, from zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An index is outside the groups, or both are the same.</exception>
    public IntervalEstimate ScaleRatio(int over, int under)
    {
        ArgumentOutOfRangeException.ThrowIfEqual(over, under);
        var log = top.Mus[over] - top.Mus[under];
        var (lower, upper) = search.Limits(top, over, under, LogRatioStandardError(over, under), Confidence);
        return new IntervalEstimate(Math.Exp(log), new Interval(Math.Exp(lower), Math.Exp(upper), Confidence));
    }

    /// <summary>Standard error of the logarithm of <see cref="ScaleRatio"/>, from the observed information.</summary>
    /// <param name="over">Index of the group above, from zero.</param>
    /// <param name="under">Index of the group below, from zero.</param>
    public double LogRatioStandardError(int over, int under) => top.LogRatioStandardError(over, under);

    /// <summary>Fits the groups. Source: see the type's remarks.</summary>
    /// <param name="distribution">A family with two parameters.</param>
    /// <param name="groups">Two groups or more, each in any order.</param>
    /// <param name="confidence">Confidence of the intervals, in (0, 1).</param>
    /// <returns>The fit, or the reason: a group without failures or never seen good, or a likelihood that rises to an edge.</returns>
    /// <exception cref="ArgumentException">There are fewer than two groups, or the family has one parameter only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    public static Outcome<CommonShapeFit> Fit(
        LifeDistribution distribution, IReadOnlyList<IReadOnlyList<Life>> groups, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        if (groups.Count < 2) throw new ArgumentException("A comparison needs two groups or more.", nameof(groups));
        if (distribution == LifeDistribution.Exponential)
            throw new ArgumentException("An exponential has no shape to share.", nameof(distribution));
        var likelihood = new CommonShapeSearch(StandardDistribution.Select(distribution), groups);
        if (likelihood.Refusal() is { } refusal) return refusal;
        if (likelihood.Maximise() is not { } peak) return LifeFitStart.NoFiniteMaximum(likelihood.Failures);
        return LifeFit.Fit(distribution, [.. groups.SelectMany(g => g)], confidence).Then<CommonShapeFit>(pooled =>
            new CommonShapeFit(distribution, likelihood, peak, confidence)
            {
                EqualScales = LikelihoodRatio.Test(peak.Value - pooled.LogLikelihood, groups.Count - 1),
                EqualShapes = Apart(distribution, groups, peak.Value),
            });
    }

    private static Outcome<LikelihoodRatio> Apart(LifeDistribution distribution, IReadOnlyList<IReadOnlyList<Life>> groups, double shared)
    {
        double apart = 0;
        foreach (var group in groups)
        {
            var own = LifeFit.Fit(distribution, group);
            if (!own.IsEstimated) return own.Reason;
            apart += own.Value.LogLikelihood;
        }

        return LikelihoodRatio.Test(apart - shared, groups.Count - 1);
    }
}
