namespace FleetTrend.Statistics.Norms;

/// <summary>What is believed of the distribution of units' rates before the counts are seen.</summary>
public sealed class RatePrior
{
    private readonly Func<double, double, double> logDensity;

    /// <summary>Makes a prior.</summary>
    /// <param name="description">What it is, for reports.</param>
    /// <param name="logDensity">Log-density over (mean, shape), up to a constant.</param>
    public RatePrior(string description, Func<double, double, double> logDensity)
    {
        Description = description;
        this.logDensity = logDensity;
    }

    /// <summary>
    /// The default: any mean (flat on its logarithm); coefficient of variation between units half-Cauchy with scale one,
    /// which allows none as well as much.
    /// </summary>
    /// <remarks>Source: half-Cauchy for a spread between groups, Gelman 2006, Bayesian Analysis 1.</remarks>
    public static RatePrior Weak { get; } = new(
        "mean flat on its logarithm; coefficient of variation half-Cauchy, scale 1",
        (mean, shape) => -Math.Log(mean) - 1.5 * Math.Log(shape) - ElementaryFunctions.LogP1(1 / shape));

    /// <summary>
    /// Any mean (flat on its logarithm); the share 1/(1 + shape) of what units differ uniform: little weight on no difference at all, so that a
    /// small one is not shrunk away. Intervals hold nearer to the stated share of times where units differ little, see COVERAGE.md.
    /// </summary>
    /// <remarks>Source: Christiansen and Morris 1997, Journal of the American Statistical Association 92 (from memory).</remarks>
    public static RatePrior UniformShrinkage { get; } = new(
        "mean flat on its logarithm; shrinkage shape/(1 + shape) uniform",
        (mean, shape) => -Math.Log(mean) - 2 * ElementaryFunctions.LogP1(shape));

    /// <summary>What it is.</summary>
    public string Description { get; }

    /// <summary>Log-density over (log mean, log shape), up to a constant.</summary>
    internal double OnLogs(double mean, double shape) => logDensity(mean, shape) + Math.Log(mean) + Math.Log(shape);
}
