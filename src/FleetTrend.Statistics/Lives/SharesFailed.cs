using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Lives;

/// <summary>The share of lives that fail by given ages, or of those good at an age in the hours ahead, with limits that hold where units (aircraft)
/// differ: units are independent, their lives are not.</summary>
/// <remarks>
/// With H the cumulative hazard that the fitted distribution has up to the age, or in the hours ahead, the share is 1 - exp(-H). Limits are symmetric
/// in ln H: its variance is that of the jackknife over
/// units, in one Newton step from the fit, and no less than that of independent lives; Student's t with one degree less than units. Fewer than five units
/// tell too little of how they differ: t with four degrees, and a coefficient of variation of one half between them is assumed.
/// Source: Lipsitz, Dear and Zhao 1994; Liang and Zeger 1986; Meeker and Escobar 1998, section 8.4. How often the limits hold: COVERAGE.md.
/// </remarks>
public static class SharesFailed
{
    private const int FewestUnits = 5;
    private const double AssumedVariation = 0.5;

    /// <summary>Estimates them.</summary>
    /// <param name="distribution">Family of the lives.</param>
    /// <param name="units">Units, each with its lives; those without any say nothing.</param>
    /// <param name="ages">The ages, hours, each above 0.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <returns>A share for each age; or the reason: no fit, or none without one of the units.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static Outcome<IReadOnlyList<IntervalEstimate>> Estimate(
        LifeDistribution distribution, IReadOnlyList<IReadOnlyList<Life>> units, IReadOnlyList<double> ages, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(ages);
        return EstimateAhead(distribution, units, [.. ages.Select(age => (0.0, age))], confidence);
    }

    /// <summary>Estimates the shares of those that are good at an age and fail in the hours ahead.</summary>
    /// <param name="distribution">Family of the lives.</param>
    /// <param name="units">Units, each with its lives; those without any say nothing.</param>
    /// <param name="spans">Ages, hours, not negative, with the hours ahead, above 0.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <returns>A share for each; or the reason: no fit, or none without one of the units.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static Outcome<IReadOnlyList<IntervalEstimate>> EstimateAhead(
        LifeDistribution distribution, IReadOnlyList<IReadOnlyList<Life>> units, IReadOnlyList<(double Age, double Ahead)> spans, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(units);
        ArgumentNullException.ThrowIfNull(spans);
        List<IReadOnlyList<Life>> watched = [.. units.Where(u => u.Count > 0)];
        return LifeFit.Fit(distribution, [.. watched.SelectMany(u => u)], confidence).Then(fit => Estimate(fit, watched, spans));
    }

    private static Outcome<IReadOnlyList<IntervalEstimate>> Estimate(
        LifeFit fit, List<IReadOnlyList<Life>> units, IReadOnlyList<(double Age, double Ahead)> spans)
    {
        if (units.Count > 1 && SharedUnitsContrast.IsCarriedByOne(units))
            return new NotEstimable(NotEstimableKind.TooFewEvents, fit.Failures, "All failures are on one unit.");
        var family = StandardDistribution.Select(fit.Distribution);
        List<LikelihoodPoint> points = [.. units.Select(u => family.LogLikelihood(new LifeArrays(u), fit.Model.Mu, Math.Log(fit.Model.Shape)))];
        var all = points.Aggregate((a, b) => a + b);
        var steps = new UnitStep[units.Count];
        for (var i = 0; i < steps.Length; i++)
        {
            if (UnitStep.Without(points[i], all) is not { } step)
                return new NotEstimable(NotEstimableKind.TooFewEvents, fit.Failures, "Without one of the units the distribution cannot be fitted.");
            steps[i] = step;
        }

        var failures = units.Select(u => u.Sum(l => l.Failed ? l.Count : 0.0) / fit.Failures).Sum(share => share * share);
        var assumed = units.Count < FewestUnits ? AssumedVariation * AssumedVariation * failures : 0;
        var reach = StudentT.InvCDF(0, 1, Math.Max(units.Count, FewestUnits) - 1, (1 + fit.Confidence) / 2);
        return spans.Select(s => Share(fit, steps, s, assumed, reach)).ToList();
    }

    private static IntervalEstimate Share(LifeFit fit, UnitStep[] steps, (double Age, double Ahead) span, double assumed, double reach)
    {
        var hazard = fit.Estimate.LogHazardAhead(span.Age, span.Ahead);
        var without = Array.ConvertAll(steps, s => (hazard.Mu * s.Mu) + (hazard.Tau * s.Tau));
        var mean = without.Average();
        var jackknife = (steps.Length - 1.0) / steps.Length * without.Sum(x => (x - mean) * (x - mean));
        var error = Math.Sqrt(Math.Max(jackknife, fit.LogCovariance.Variance(hazard.Mu, hazard.Tau) + assumed));
        return new IntervalEstimate(Failed(hazard.Value), new Interval(Failed(hazard.Value - (reach * error)), Failed(hazard.Value + (reach * error)),
            fit.Confidence));
    }

    private static double Failed(double logHazard) => ElementaryFunctions.OneMinusExp(Math.Exp(logHazard));
}
