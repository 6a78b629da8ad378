using MathNet.Numerics;

namespace FleetTrend.Statistics.Norms;

/// <summary>
/// How much units' rates differ beyond chance: rates as draws of a gamma distribution, fitted by marginal maximum likelihood. Where
/// the counts spread no more than chance alone would spread them, the distribution shrinks to one point (<see cref="NoExtraVariation"/>).
/// </summary>
public sealed record GammaPoissonFit
{
    private GammaPoissonErrors? errors;

    /// <summary>Units with exposure behind the fit.</summary>
    public required int Units { get; init; }

    /// <summary>Events behind the fit.</summary>
    public required long Events { get; init; }

    /// <summary>Shape of the gamma distribution; positive infinity without extra variation.</summary>
    public required double Shape { get; init; }

    /// <summary>Mean rate of units, events per unit of exposure.</summary>
    public required double Mean { get; init; }

    /// <summary>Rate parameter of the gamma distribution, shape over mean; positive infinity without extra variation.</summary>
    public double Rate => Shape / Mean;

    /// <summary>The boundary: the counts show no variation between units beyond chance.</summary>
    public bool NoExtraVariation => double.IsInfinity(Shape);

    /// <summary>Standard deviation of units' rates over their mean; zero without extra variation.</summary>
    public double CoefficientOfVariation => NoExtraVariation ? 0 : 1 / Math.Sqrt(Shape);

    /// <summary>Standard deviation of units' rates; zero without extra variation.</summary>
    public double StandardDeviation => Mean * CoefficientOfVariation;

    /// <summary>
    /// Standard errors of the distribution's parameters; <see cref="NotEstimableKind.OnBoundary"/> without extra variation, or so close to it
    /// that the likelihood is flat.
    /// </summary>
    /// <remarks>Source: inverse of the observed information (Fisher); on the edge see Self and Liang 1987.</remarks>
    public Outcome<GammaPoissonErrors> Errors => errors is { } found
        ? found
        : new NotEstimable(NotEstimableKind.OnBoundary, Events, "No extra variation, or next to none: nothing limits shape and rate from above.");

    /// <summary>Log-likelihood at the maximum.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Log-likelihood with one rate for all units.</summary>
    public required double PoissonLogLikelihood { get; init; }

    /// <summary>Twice the log-likelihood gained over one rate for all.</summary>
    public double LikelihoodRatio => Math.Max(0, 2 * (LogLikelihood - PoissonLogLikelihood));

    /// <summary>
    /// Chance of such a gain were all rates equal: half the chi-square tail, because one rate lies on the edge of the model.
    /// </summary>
    public double EqualRatesPValue =>
        LikelihoodRatio > 0 ? SpecialFunctions.GammaUpperRegularized(0.5, LikelihoodRatio / 2) / 2 : 1;

    /// <summary>Fits the distribution.</summary>
    /// <param name="units">Units; those without exposure do not enter.</param>
    /// <returns>
    /// The fit, on the boundary too; <see cref="NotEstimableKind.NoEvents"/> without events, and
    /// <see cref="NotEstimableKind.NoInformation"/> for a single unit.
    /// </returns>
    /// <remarks>
    /// Source: gamma-Poisson empirical Bayes as in Gaver and O'Muircheartaigh 1987, Technometrics 29; test on the boundary,
    /// Self and Liang 1987, J. Am. Stat. Assoc. 82.
    /// </remarks>
    public static Outcome<GammaPoissonFit> Fit(IReadOnlyList<CountExposure> units)
    {
        var likelihood = new GammaPoissonLikelihood(units);
        if (likelihood.Units == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit had exposure.");
        if (likelihood.Events == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No unit had an event: their rates cannot be told apart.");
        if (likelihood.Units == 1)
            return new NotEstimable(NotEstimableKind.NoInformation, likelihood.Events, "One unit has no others to differ from.");

        var (shape, logLikelihood) = Maximum(likelihood);
        return new GammaPoissonFit
        {
            Units = likelihood.Units,
            Events = likelihood.Events,
            Shape = shape,
            Mean = double.IsInfinity(shape) ? likelihood.PooledRate : likelihood.BestMean(shape),
            LogLikelihood = logLikelihood,
            PoissonLogLikelihood = likelihood.Poisson,
            errors = double.IsInfinity(shape) ? null : likelihood.Errors(likelihood.BestMean(shape), shape),
        };
    }

    /// <summary>
    /// Gamma posterior of one unit's rate with the fitted distribution taken as known. It ignores that the distribution is itself estimated
    /// and is too narrow for few units; <see cref="HierarchicalRates"/> carries that uncertainty.
    /// </summary>
    /// <param name="unit">The unit's events and exposure.</param>
    /// <param name="confidence">Credibility of the interval, in (0, 1).</param>
    /// <returns>The posterior; <see cref="NotEstimableKind.OnBoundary"/> without extra variation, where it would be a point.</returns>
    /// <remarks>Source: conjugacy of gamma and Poisson, as in Gaver and O'Muircheartaigh 1987.</remarks>
    public Outcome<GammaPosterior> Posterior(CountExposure unit, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        return NoExtraVariation
            ? new NotEstimable(NotEstimableKind.OnBoundary, Events, "No extra variation: every unit has the pooled rate.")
            : new GammaPosterior(Shape + unit.Events, Rate + unit.Exposure, confidence);
    }

    /// <summary>
    /// Chance of at least this many events on a unit drawn from the distribution, between-unit spread included: the test for a unit
    /// that is odd even among units that differ.
    /// </summary>
    /// <param name="unit">The unit's events and exposure.</param>
    /// <returns>The chance, in [0, 1].</returns>
    /// <remarks>Source: upper tail of the negative binomial distribution, the marginal of the gamma-Poisson model.</remarks>
    public double UpperPValue(CountExposure unit)
    {
        if (unit.Events == 0)
            return 1;
        return NoExtraVariation
            ? SpecialFunctions.GammaLowerRegularized(unit.Events, Mean * unit.Exposure)
            : SpecialFunctions.BetaRegularized(unit.Events, Shape, unit.Exposure / (Rate + unit.Exposure));
    }

    private static (double Shape, double LogLikelihood) Maximum(GammaPoissonLikelihood likelihood)
    {
        const double lowest = -9.5;
        const double step = 0.5;
        const int steps = 60;
        double Score(double logShape)
        {
            var shape = Math.Exp(logShape);
            return likelihood.ShapeScore(likelihood.BestMean(shape), shape);
        }

        var best = (Shape: double.PositiveInfinity, LogLikelihood: likelihood.Poisson);
        var (before, slope) = (lowest, Score(lowest));
        for (var k = 1; k <= steps; k++)
        {
            var next = lowest + k * step;
            var nextSlope = Score(next);
            if (slope > 0 && nextSlope <= 0)
            {
                var shape = Math.Exp(RootSearch.Find(Score, before, next));
                var value = likelihood.At(likelihood.BestMean(shape), shape);
                // The margin keeps rounding noise at huge shapes from being taken for extra variation.
                if (value > best.LogLikelihood + 1e-9 * Math.Max(1, Math.Abs(best.LogLikelihood)))
                    best = (shape, value);
            }
            (before, slope) = (next, nextSlope);
        }
        return best;
    }
}
