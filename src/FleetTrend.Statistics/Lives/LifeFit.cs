namespace FleetTrend.Statistics.Lives;

/// <summary>
/// A life distribution fitted by maximum likelihood to any mix of exact, right-, left-, interval-censored and left-truncated lives, with
/// profile-likelihood intervals.
/// </summary>
/// <remarks>
/// A life adds ln f(t) (exact), ln S(lower) (right-censored) or ln(S(lower) - S(upper)) (interval), each less ln S(entry).
/// Intervals are computed when first asked for, and kept.
/// Source: Meeker and Escobar, Statistical Methods for Reliability Data, 1998, chapters 8 and 11; IEC 61649; NIST/SEMATECH e-Handbook 8.4.1.
/// </remarks>
public sealed class LifeFit
{
    private readonly LikelihoodSearch search;
    private readonly LikelihoodSearch.Peak peak;
    private readonly StandardDistribution family;
    private readonly LogCovariance covariance;
    private readonly Lazy<LikelihoodRegion> region;
    private readonly Lazy<LifeParameter> scale;
    private readonly Lazy<LifeParameter> shape;

    private LifeFit(
        LifeDistribution distribution, LikelihoodSearch search, LikelihoodSearch.Peak peak, LogCovariance covariance, bool isShapeGiven,
        double confidence)
    {
        this.search = search;
        this.peak = peak;
        this.covariance = covariance;
        Distribution = distribution;
        IsShapeGiven = isShapeGiven;
        Confidence = confidence;
        family = StandardDistribution.Select(distribution);
        Model = new LifeModel(distribution, Math.Exp(peak.Mu), isShapeGiven && peak.Tau == 0 ? 1 : Math.Exp(peak.Tau));
        Estimate = new LifeEstimate(distribution, Model.Scale, Model.Shape, covariance);
        region = new Lazy<LikelihoodRegion>(() => isShapeGiven
            ? LikelihoodRegion.AtShape(search, peak, confidence)
            : LikelihoodRegion.Around(search, peak, covariance, confidence));
        scale = new Lazy<LifeParameter>(FitScale);
        shape = new Lazy<LifeParameter>(FitShape);
    }

    /// <summary>The family.</summary>
    public LifeDistribution Distribution { get; }

    /// <summary>Whether the shape was given (the exponential, a stated-shape fit) rather than fitted.</summary>
    public bool IsShapeGiven { get; }

    /// <summary>Confidence of every interval.</summary>
    public double Confidence { get; }

    /// <summary>The fitted distribution: survival, hazard, mean and the rest, without intervals.</summary>
    public LifeModel Model { get; }

    /// <summary>The fitted distribution with its covariance, without the lives behind it.</summary>
    public LifeEstimate Estimate { get; }

    /// <summary>Lives in the data, counts included.</summary>
    public long Lives => search.Lives.Lives;

    /// <summary>Failures among them.</summary>
    public long Failures => search.Lives.Failures;

    /// <summary>Maximised log-likelihood; exact failures enter with their density per hour.</summary>
    public double LogLikelihood => peak.Point.Value;

    /// <summary>Akaike's criterion, 2 parameters - 2 log-likelihood; smaller is better, and only differences mean anything. Source: Akaike 1974.</summary>
    public double Aic => (2 * FittedParameters) - (2 * LogLikelihood);

    /// <summary>Number of parameters fitted: 2, or 1 where the shape was given.</summary>
    public int FittedParameters => IsShapeGiven ? 1 : 2;

    /// <summary>Scale, exp(mu), in hours.</summary>
    public LifeParameter Scale => scale.Value;

    /// <summary>Shape, 1/sigma.</summary>
    public LifeParameter Shape => shape.Value;

    /// <summary>mu = ln scale.</summary>
    public LifeParameter Mu => new(
        "mu", peak.Mu, Math.Sqrt(covariance.LogScale),
        new Interval(Math.Log(Scale.Interval.Lower), Math.Log(Scale.Interval.Upper), Confidence),
        new Interval(Math.Log(Scale.WaldInterval.Lower), Math.Log(Scale.WaldInterval.Upper), Confidence));

    /// <summary>sigma = 1/shape.</summary>
    public LifeParameter Sigma => new(
        "sigma", Model.Sigma, Model.Sigma * Math.Sqrt(covariance.LogShape),
        new Interval(1 / Shape.Interval.Upper, 1 / Shape.Interval.Lower, Confidence), Wald(Model.Sigma, 0, 1));

    /// <summary>The family's customary parameters: shape and scale; mu and sigma for the lognormal; scale for the exponential.</summary>
    public IReadOnlyList<LifeParameter> Parameters => Distribution switch
    {
        LifeDistribution.Lognormal => [Mu, Sigma],
        LifeDistribution.Exponential => [Scale],
        _ => [Shape, Scale],
    };

    /// <summary>Variances of ln scale and ln shape and their covariance, from the observed information. Source: inverse of the negative Hessian.</summary>
    public LogCovariance LogCovariance => covariance;

    /// <summary>Fits a distribution. Source: see the type's remarks.</summary>
    /// <param name="distribution">The family.</param>
    /// <param name="lives">The lives, in any order.</param>
    /// <param name="confidence">Confidence of the intervals, in (0, 1).</param>
    /// <returns>The fit; or the reason when no finite maximum exists, which happens with no failures, with all lives compatible
    /// with one single failure age, and with left-censored data that show no growth with age.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    public static Outcome<LifeFit> Fit(LifeDistribution distribution, IReadOnlyList<Life> lives, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        return distribution == LifeDistribution.Exponential
            ? FitScaleOnly(distribution, 1, lives, confidence)
            : FitBoth(distribution, lives, confidence);
    }

    /// <summary>
    /// The age by which a share <paramref name="probability"/> has failed, with its interval: 0.1 for B10, 0.5 for the median.
    /// Source: Meeker and Escobar 1998, section 8.3.3 (profile of the quantile).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not in (0, 1).</exception>
    public IntervalEstimate Quantile(double probability)
    {
        var value = Model.Quantile(probability);
        var z = family.ZOfLogSurvival(ElementaryFunctions.LogP1(-probability));
        var (lower, upper) = region.Value.Limits(LogAge, rises: true);
        return new IntervalEstimate(value, new Interval(Math.Exp(lower), Math.Exp(upper), Confidence));

        LikelihoodPoint LogAge(double mu, double tau)
        {
            var offset = z * Math.Exp(-tau);
            return new LikelihoodPoint(mu + offset, 1, -offset, 0, 0, offset);
        }
    }

    /// <summary>
    /// As <see cref="Quantile"/> with a normal interval on the logarithm from the standard error, as most programs print it.
    /// Source: Meeker and Escobar 1998, section 8.4.3 (delta method).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not in (0, 1).</exception>
    public IntervalEstimate QuantileWald(double probability)
    {
        var value = Model.Quantile(probability);
        var weight = -family.ZOfLogSurvival(ElementaryFunctions.LogP1(-probability)) / Model.Shape;
        return new IntervalEstimate(value, Wald(value, 1, weight));
    }

    /// <summary>Probability of surviving beyond <paramref name="age"/> hours, with its interval. Source: profile of S(age), as for quantiles.</summary>
    public IntervalEstimate Survival(double age)
    {
        var value = Model.Survival(age);
        if (age == 0) return new IntervalEstimate(1, new Interval(1, 1, Confidence));
        var (lower, upper) = ZLimits(age);
        return new IntervalEstimate(
            value, Ordered(Math.Exp(family.LogSurvival(upper).Value), Math.Exp(family.LogSurvival(lower).Value)));
    }

    /// <summary>Probability of having failed by <paramref name="age"/> hours, with its interval. Source: as <see cref="Survival"/>.</summary>
    public IntervalEstimate Cdf(double age)
    {
        var value = Model.Cdf(age);
        if (age == 0) return new IntervalEstimate(0, new Interval(0, 0, Confidence));
        var (lower, upper) = ZLimits(age);
        return new IntervalEstimate(value, Ordered(Math.Exp(family.LogCdf(lower).Value), Math.Exp(family.LogCdf(upper).Value)));
    }

    /// <summary>
    /// Probability that one still good at <paramref name="age"/> fails within the next <paramref name="ahead"/> hours, with its interval.
    /// Source: 1 - S(age + ahead)/S(age); IEC 61649; its profile likelihood.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The age is negative, or ahead is not above 0 and finite.</exception>
    public IntervalEstimate ConditionalFailure(double age, double ahead)
    {
        if (!(ahead > 0 && double.IsFinite(ahead))) throw new ArgumentOutOfRangeException(nameof(ahead), ahead, "Hours ahead are above 0 and finite.");
        if (age == 0) return Cdf(ahead);
        var value = Model.ConditionalFailure(age, ahead);
        var between = new ConditionalHazard(family, Math.Log(age), Math.Log(age + ahead));
        var (lower, upper) = region.Value.Limits(between.At, rises: false);
        return new IntervalEstimate(
            value, Ordered(ElementaryFunctions.OneMinusExp(Math.Exp(lower)), ElementaryFunctions.OneMinusExp(Math.Exp(upper))));
    }

    private static Outcome<LifeFit> FitBoth(LifeDistribution distribution, IReadOnlyList<Life> lives, double confidence)
    {
        var arrays = new LifeArrays(lives);
        if (LifeFitStart.Refusal(arrays) is { } refusal) return refusal;
        var likelihood = new LikelihoodSearch(StandardDistribution.Select(distribution), arrays);
        return LifeFitStart.Peak(likelihood, lives) is { } top && LogCovariance.Invert(top.Point) is { } covariance
            ? new LifeFit(distribution, likelihood, top, covariance, isShapeGiven: false, confidence)
            : LifeFitStart.NoFiniteMaximum(arrays.Failures);
    }

    private static Outcome<LifeFit> FitScaleOnly(
        LifeDistribution distribution, double shape, IReadOnlyList<Life> lives, double confidence)
    {
        var arrays = new LifeArrays(lives);
        if (LifeFitStart.ScaleRefusal(arrays) is { } refusal) return refusal;
        var likelihood = new LikelihoodSearch(StandardDistribution.Select(distribution), arrays);
        if (likelihood.GreatestAt(Math.Log(shape), arrays.MeanLogAge()) is not { } top) return LifeFitStart.NoFiniteMaximum(arrays.Failures);
        return new LifeFit(distribution, likelihood, top, new LogCovariance(-1 / top.Point.MuMu, 0, 0), isShapeGiven: true, confidence);
    }

    private LifeParameter FitScale()
    {
        var (lower, upper) = region.Value.Limits((mu, _) => new LikelihoodPoint(mu, 1, 0, 0, 0, 0), rises: true);
        return new LifeParameter(
            "scale", Model.Scale, Model.Scale * StandardError(1, 0), new Interval(Math.Exp(lower), Math.Exp(upper), Confidence),
            Wald(Model.Scale, 1, 0));
    }

    private LifeParameter FitShape()
    {
        if (IsShapeGiven) return new LifeParameter("shape", Model.Shape, 0, Wald(Model.Shape, 0, 0), Wald(Model.Shape, 0, 0));
        var (lower, upper) = region.Value.Taus();
        return new LifeParameter(
            "shape", Model.Shape, Model.Shape * StandardError(0, 1), new Interval(Math.Exp(lower), Math.Exp(upper), Confidence),
            Wald(Model.Shape, 0, 1));
    }

    /// <summary>Limits of z = shape (ln age - mu).</summary>
    private (double Lower, double Upper) ZLimits(double age)
    {
        var logAge = Math.Log(age);
        return region.Value.Limits(Z, rises: false);

        LikelihoodPoint Z(double mu, double tau)
        {
            var ofTau = Math.Exp(tau) * (logAge - mu);
            return new LikelihoodPoint(ofTau, -Math.Exp(tau), ofTau, 0, -Math.Exp(tau), ofTau);
        }
    }

    private double StandardError(double ofMu, double ofTau) => Math.Sqrt(covariance.Variance(ofMu, ofTau));

    /// <summary>Normal interval on the logarithm of a quantity whose logarithm has these derivatives in mu and tau.</summary>
    private Interval Wald(double value, double ofMu, double ofTau)
    {
        var factor = Math.Exp(Rates.Quantile.NormalTwoSided(Confidence) * StandardError(ofMu, ofTau));
        return new Interval(value / factor, value * factor, Confidence);
    }

    private Interval Ordered(double lower, double upper) => new(Math.Min(lower, upper), Math.Max(lower, upper), Confidence);
}
