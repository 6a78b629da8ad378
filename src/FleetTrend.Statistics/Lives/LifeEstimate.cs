namespace FleetTrend.Statistics.Lives;

/// <summary>
/// A fitted life distribution in the few numbers that chances ahead need, without the lives behind it: what is kept of a fit, so that what was said by it can
/// be held against what then happened.
/// </summary>
/// <param name="Distribution">The family.</param>
/// <param name="Scale">Scale, hours.</param>
/// <param name="Shape">Shape.</param>
/// <param name="Covariance">Variances and covariance of ln scale and ln shape.</param>
public sealed record LifeEstimate(LifeDistribution Distribution, double Scale, double Shape, LogCovariance Covariance)
{
    /// <summary>The chance that one good at an age fails in the hours ahead, with its slopes. Source: as <see cref="FailuresAhead"/>.</summary>
    /// <param name="age">The age, hours; not negative.</param>
    /// <param name="ahead">Hours ahead; above 0.</param>
    public ChanceAhead ChanceAhead(double age, double ahead)
    {
        var hazard = LogHazardAhead(age, ahead);
        var passed = Math.Exp(hazard.Value);
        var chance = ElementaryFunctions.OneMinusExp(passed);
        var slope = (1 - chance) * passed; // of the chance in the log of the hazard
        return new ChanceAhead(chance, slope * hazard.Mu, slope * hazard.Tau);
    }

    /// <summary>Log of the hazard that one good at <paramref name="age"/> passes in the next <paramref name="ahead"/> hours, with its derivatives.</summary>
    internal LikelihoodPoint LogHazardAhead(double age, double ahead)
    {
        var family = StandardDistribution.Select(Distribution);
        var (mu, tau) = (Math.Log(Scale), Math.Log(Shape));
        if (age > 0) return new ConditionalHazard(family, Math.Log(age), Math.Log(age + ahead)).At(mu, tau);
        var z = Shape * (Math.Log(ahead) - mu);
        var passed = family.LogCumulativeHazard(z);
        return new LikelihoodPoint(passed.Value, -Shape * passed.First, z * passed.First, 0, 0, 0);
    }
}
