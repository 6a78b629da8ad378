using FleetTrend.Statistics.Lives;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// The Weibull lives that fit parts on units (aircraft) that differ: a fit, and around it all pairs of shape and scale that the lives leave open. A
/// decision that
/// rests on the life, such as a renewal age, has the least and the greatest value in there as its limits.
/// </summary>
/// <remarks>
/// The region is the hull of two ellipses in (ln scale, ln shape) around the fit: one by the observed information, as if parts were independent, one by the
/// jackknife over units in one Newton step; both reach as far as Student's t with one degree less than units. So limits are no closer than those of
/// independent parts. Fewer than five units: as in <see cref="SharesFailed"/>.
/// Source: Meeker and Escobar 1998, section 8.3 (a region of the parameters gives limits of every function of them); Lipsitz, Dear and Zhao 1994 (jackknife by
/// clusters).
/// </remarks>
public sealed class WeibullRegion
{
    private const int FewestUnits = 5;
    private const double AssumedVariation = 0.5;
    private const int Directions = 24;

    /// <summary>A region this wide says nothing, and its edges are no lives that can be computed with.</summary>
    private const double MostOpen = 100;

    /// <summary>
    /// Steepest shape that decisions are computed with: parts all fail within a tenth of their life. A steeper one would move an age by a few hours, and
    /// its hazard soon leaves the numbers.
    /// </summary>
    public const double SteepestShape = 40;

    private readonly double mu;
    private readonly double tau;
    private readonly double reach;
    private readonly LogCovariance[] ellipses;

    private WeibullRegion(LifeFit fit, LogCovariance[] ellipses, double reach)
    {
        (mu, tau, this.reach, this.ellipses) = (fit.Model.Mu, Math.Log(fit.Model.Shape), reach, ellipses);
        (Life, Failures, Confidence) = (new WeibullLife(Math.Min(fit.Model.Shape, SteepestShape), fit.Model.Scale), fit.Failures, fit.Confidence);
        var most = reach * Math.Sqrt(ellipses.Max(e => e.LogShape));
        Shape = new Interval(Math.Exp(tau - most), Math.Exp(tau + most), Confidence);
    }

    /// <summary>The fitted life.</summary>
    public WeibullLife Life { get; }

    /// <summary>Limits of the shape: above one a part wears out, so that an old one fails sooner than a new one.</summary>
    public Interval Shape { get; }

    /// <summary>Failures behind it.</summary>
    public long Failures { get; }

    /// <summary>Confidence of all limits.</summary>
    public double Confidence { get; }

    /// <summary>Fits the life, and finds what the units leave open.</summary>
    /// <param name="units">Units, each with its lives; those without any say nothing.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <param name="known">The Weibull fit to all these lives, where it has been made; null to make it.</param>
    /// <returns>The region; or the reason: no fit, all failures on one of several units, no fit without one of them, or a region that says nothing.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static Outcome<WeibullRegion> Estimate(IReadOnlyList<IReadOnlyList<Life>> units, double confidence = 0.95, LifeFit? known = null)
    {
        ArgumentNullException.ThrowIfNull(units);
        List<IReadOnlyList<Life>> watched = [.. units.Where(u => u.Count > 0)];
        return known is null
            ? LifeFit.Fit(LifeDistribution.Weibull, [.. watched.SelectMany(u => u)], confidence).Then(fit => Around(fit, watched))
            : Around(known, watched);
    }

    /// <summary>A quantity of the life with the least and the greatest value that it takes in the region.</summary>
    /// <param name="quantity">The quantity; it may be infinite.</param>
    /// <remarks>Source: see the type's remarks.</remarks>
    public IntervalEstimate Limits(Func<WeibullLife, double> quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        var value = quantity(Life);
        var (lower, upper) = (value, value);
        foreach (var ellipse in ellipses)
        {
            lower = Math.Min(lower, Extreme(ellipse, quantity, -1));
            upper = Math.Max(upper, Extreme(ellipse, quantity, +1));
        }

        return new IntervalEstimate(value, new Interval(lower, upper, Confidence));
    }

    private static Outcome<WeibullRegion> Around(LifeFit fit, List<IReadOnlyList<Life>> units)
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

        var information = fit.LogCovariance;
        if (units.Count < FewestUnits)
        {
            // A variation between units moves ln H, which is shape times ln scale.
            var failures = units.Select(u => u.Sum(l => l.Failed ? l.Count : 0.0) / fit.Failures).Sum(share => share * share);
            var assumed = AssumedVariation * AssumedVariation * failures / (fit.Model.Shape * fit.Model.Shape);
            information = information with { LogScale = information.LogScale + assumed };
        }

        var degrees = Math.Max(units.Count, FewestUnits) - 1;
        LogCovariance[] around = [information, Jackknife(steps)];
        var t = StudentT.InvCDF(0, 1, degrees, (1 + fit.Confidence) / 2);
        if (!(t * Math.Sqrt(around.Max(e => Math.Max(e.LogScale, e.LogShape))) < Math.Log(MostOpen)))
            return new NotEstimable(NotEstimableKind.NoInformation, fit.Failures, $"The lives leave shape or scale open by more than {MostOpen:N0} times either way.");
        return new WeibullRegion(fit, around, t);
    }

    private static LogCovariance Jackknife(UnitStep[] steps)
    {
        var (meanMu, meanTau, weight) = (steps.Average(s => s.Mu), steps.Average(s => s.Tau), (steps.Length - 1.0) / steps.Length);
        return new LogCovariance(
            weight * steps.Sum(s => (s.Mu - meanMu) * (s.Mu - meanMu)),
            weight * steps.Sum(s => (s.Tau - meanTau) * (s.Tau - meanTau)),
            weight * steps.Sum(s => (s.Mu - meanMu) * (s.Tau - meanTau)));
    }

    /// <summary>The extreme on the edge of an ellipse: the best of some directions, then between its neighbours.</summary>
    private double Extreme(LogCovariance ellipse, Func<WeibullLife, double> quantity, int side)
    {
        if (ellipse.LogScale <= 0)
            return quantity(Life);
        var root = Math.Sqrt(ellipse.LogScale);
        var (across, along) = (ellipse.Mixed / root, Math.Sqrt(Math.Max(0, ellipse.LogShape - (ellipse.Mixed * ellipse.Mixed / ellipse.LogScale))));
        const double step = 2 * Math.PI / Directions;
        var (best, at) = (double.NegativeInfinity, 0.0);
        for (var i = 0; i < Directions; i++)
        {
            var value = At(i * step);
            if (value > best)
                (best, at) = (value, i * step);
        }

        return side * (double.IsInfinity(best) ? best : Math.Max(best, -Minimum.Find(angle => -At(angle), at - step, at + step)));

        double At(double angle)
        {
            var (x, y) = (reach * Math.Cos(angle), reach * Math.Sin(angle));
            return side * quantity(new WeibullLife(Math.Min(Math.Exp(tau + (across * x) + (along * y)), SteepestShape), Math.Exp(mu + (root * x))));
        }
    }
}
