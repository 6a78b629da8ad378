namespace FleetTrend.Statistics.Norms;

/// <summary>
/// Units' rates shrunk towards each other, with the uncertainty of the distribution of rates carried through: the posterior is
/// averaged over mean and shape of the gamma distribution. It needs no separate treatment of the boundary: where counts spread no
/// more than chance, large shapes get the weight and every unit's ratio comes close to one, with an honest interval.
/// </summary>
public sealed class HierarchicalRates
{
    private readonly RateNode[] nodes;
    private readonly ShrunkRate[] units;

    private HierarchicalRates(RateNode[] nodes, ShrunkRate[] units, RatePrior prior, long events)
    {
        this.nodes = nodes;
        this.units = units;
        Prior = prior;
        Events = events;
    }

    /// <summary>Units in the order given.</summary>
    public IReadOnlyList<ShrunkRate> Units => units;

    /// <summary>Events behind the estimate.</summary>
    public long Events { get; }

    /// <summary>The prior used.</summary>
    public RatePrior Prior { get; }

    /// <summary>Posterior mean of the units' mean rate, events per unit of exposure.</summary>
    public double MeanRate => nodes.Sum(n => n.Weight * n.Mean);

    /// <summary>Posterior mean of the coefficient of variation between units.</summary>
    public double CoefficientOfVariation => nodes.Sum(n => n.Weight / Math.Sqrt(n.Shape));

    /// <summary>Posterior mean of the gamma distribution's shape; may be huge where no extra variation is likely.</summary>
    public double MeanShape => nodes.Sum(n => n.Weight * n.Shape);

    /// <summary>Posterior mean of the gamma distribution's rate parameter.</summary>
    public double MeanRateParameter => nodes.Sum(n => n.Weight * n.Shape / n.Mean);

    /// <summary>Posterior standard deviation of the gamma distribution's shape.</summary>
    public double ShapeDeviation => Deviation(n => n.Shape);

    /// <summary>Posterior standard deviation of the gamma distribution's rate parameter.</summary>
    public double RateParameterDeviation => Deviation(n => n.Shape / n.Mean);

    /// <summary>Estimates all units together.</summary>
    /// <param name="units">Units' events and exposure (hours, or events expected at the norm).</param>
    /// <param name="confidence">Credibility of intervals, in (0, 1).</param>
    /// <param name="prior">Prior of the distribution of rates; <see cref="RatePrior.Weak"/> when null.</param>
    /// <param name="smallestWeight">
    /// Points of the distribution with less weight are left out; time goes with the points that are left. At 0.001 limits move by some 2 %.
    /// </param>
    /// <returns>
    /// The estimate; <see cref="NotEstimableKind.NothingObserved"/> without exposure, <see cref="NotEstimableKind.NoEvents"/>
    /// without events.
    /// </returns>
    /// <remarks>
    /// Source: George, Makov and Smith 1993, Scandinavian Journal of Statistics 20 (the hierarchy), integrated by
    /// quadrature. Above 5,000 units the distribution's best point is used, so that time stays linear in units.
    /// </remarks>
    public static Outcome<HierarchicalRates> Estimate(
        IReadOnlyList<CountExposure> units, double confidence = 0.95, RatePrior? prior = null, double smallestWeight = 1e-8)
    {
        Confidences.Check(confidence);
        prior ??= RatePrior.Weak;
        var likelihood = new GammaPoissonLikelihood(units);
        if (likelihood.Units == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit had exposure.");
        if (likelihood.Events == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No unit had an event: their rates cannot be told apart.");
        var distribution = RateQuadrature.Nodes(likelihood, prior, smallestWeight);
        return new HierarchicalRates(
            distribution, [.. units.Select(u => new ShrunkRate(u, distribution, confidence))], prior, likelihood.Events);
    }

    private double Deviation(Func<RateNode, double> value)
    {
        var mean = nodes.Sum(n => n.Weight * value(n));
        return Math.Sqrt(nodes.Sum(n => n.Weight * (value(n) - mean) * (value(n) - mean)));
    }
}
