namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Chances that parts fail in the hours ahead of them, given that each is still good at its age, with limits from the covariance of the fitted parameters.
/// They cost a few operations a part, where <see cref="LifeFit.ConditionalFailure"/> searches the likelihood for each.
/// </summary>
/// <remarks>
/// With h = ln S(age) - ln S(age + ahead) the chance is 1 - exp(-h). Limits are normal on ln h, those of a sum on its logarithm; parts that share a fit share
/// its error, and fits are independent.
/// Source: Meeker and Escobar, Statistical Methods for Reliability Data, 1998, sections 8.4.3 and 12.2 (delta method; conditional failure); IEC 61649.
/// </remarks>
public static class FailuresAhead
{
    /// <summary>The chance that one part fails, with its limits.</summary>
    /// <param name="part">The part.</param>
    public static IntervalEstimate EstimateChance(PartAhead part)
    {
        if (part.Ahead == 0)
            return new IntervalEstimate(0, new Interval(0, 0, part.Fit.Confidence));
        var hazard = part.Fit.Estimate.LogHazardAhead(part.Age, part.Ahead);
        var reach = Rates.Quantile.NormalTwoSided(part.Fit.Confidence) * Math.Sqrt(part.Fit.LogCovariance.Variance(hazard.Mu, hazard.Tau));
        return new IntervalEstimate(
            Chance(hazard.Value), new Interval(Chance(hazard.Value - reach), Chance(hazard.Value + reach), part.Fit.Confidence));
    }

    /// <summary>How many of the parts fail in the mean, with the limits of that mean; the count itself scatters more.</summary>
    /// <param name="parts">The parts, each with the fit of similar parts.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    public static IntervalEstimate EstimateSum(IEnumerable<PartAhead> parts, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var (sum, variance) = (0.0, 0.0);
        foreach (var alike in parts.Where(p => p.Ahead > 0).GroupBy(p => p.Fit))
        {
            var (ofMu, ofTau) = (0.0, 0.0);
            foreach (var part in alike)
            {
                var chance = alike.Key.Estimate.ChanceAhead(part.Age, part.Ahead);
                sum += chance.Chance;
                ofMu += chance.OfLogScale;
                ofTau += chance.OfLogShape;
            }

            variance += alike.Key.LogCovariance.Variance(ofMu, ofTau);
        }

        var factor = sum > 0 ? Math.Exp(Rates.Quantile.NormalTwoSided(confidence) * Math.Sqrt(variance) / sum) : 1;
        return new IntervalEstimate(sum, new Interval(sum / factor, sum * factor, confidence));
    }

    private static double Chance(double logHazard) => ElementaryFunctions.OneMinusExp(Math.Exp(logHazard));
}
