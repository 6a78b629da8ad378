using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Intervals and goodness of fit by fitting again to lives drawn from the fitted distribution: for few failures, where the profile likelihood's
/// chi-square is only an approximation.
/// </summary>
public static class ParametricBootstrap
{
    /// <summary>
    /// Bias-corrected percentile interval of any quantity of a fit. Source: Efron 1987 (without acceleration); Efron and Tibshirani 1993, chapter 14.
    /// </summary>
    /// <param name="fit">The fit.</param>
    /// <param name="lives">The lives that it was fitted to.</param>
    /// <param name="quantity">The quantity, from a fit to drawn lives.</param>
    /// <param name="seed">Seed: the same seed gives the same interval.</param>
    /// <param name="replicates">Sets drawn, at least 100.</param>
    /// <returns>The quantity and its interval; a reason when more than one drawn set in ten cannot be fitted.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 100 replicates.</exception>
    public static Outcome<IntervalEstimate> Interval(
        LifeFit fit, IReadOnlyList<Life> lives, Func<LifeModel, double> quantity, int seed, int replicates = 999)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(replicates, 100);
        var value = quantity(fit.Model);
        double[] drawn = [.. Refits(fit, lives, seed, replicates).Select(r => quantity(r.Model)).Order()];
        if (drawn.Length < 0.9 * replicates)
        {
            return new NotEstimable(
                NotEstimableKind.TooFewEvents, fit.Failures, $"Only {drawn.Length} of {replicates} drawn sets could be fitted: too few failures.");
        }

        var below = (drawn.Count(d => d < value) + (0.5 * drawn.Count(d => d == value))) / drawn.Length;
        var bias = Normal.InvCDF(0, 1, Math.Clamp(below, 0.5 / drawn.Length, 1 - (0.5 / drawn.Length)));
        var z = Normal.InvCDF(0, 1, (1 + fit.Confidence) / 2);
        return new IntervalEstimate(value, new Interval(At((2 * bias) - z), At((2 * bias) + z), fit.Confidence));

        double At(double normal)
        {
            var position = Normal.CDF(0, 1, normal) * (drawn.Length - 1);
            var index = Math.Min((int)position, drawn.Length - 2);
            return drawn[index] + ((position - index) * (drawn[index + 1] - drawn[index]));
        }
    }

    /// <summary>
    /// Whether the lives look as if they came from the fitted distribution: the largest distance between its cdf and the non-parametric estimate,
    /// at the ages where that is determined, against the same distance for lives drawn from the distribution.
    /// Source: Kolmogorov distance with estimated parameters, by simulation as Lilliefors 1967; Stute and others 1993.
    /// </summary>
    /// <param name="fit">The fit.</param>
    /// <param name="lives">The lives that it was fitted to.</param>
    /// <param name="seed">Seed: the same seed gives the same answer.</param>
    /// <param name="replicates">Sets drawn, at least 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 100 replicates.</exception>
    public static Outcome<GoodnessOfFit> GoodnessOfFit(LifeFit fit, IReadOnlyList<Life> lives, int seed, int replicates = 199)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(replicates, 100);
        return TurnbullEstimate.Estimate(lives).Then<GoodnessOfFit>(estimate =>
        {
            var distance = Distance(fit.Model, estimate);
            var (larger, used) = (0, 0);
            foreach (var (model, drawn) in Refits(fit, lives, seed, replicates))
            {
                if (!TurnbullEstimate.Estimate(drawn).TryGetValue(out var own)) continue;
                used++;
                if (Distance(model, own) >= distance) larger++;
            }

            return used < 0.9 * replicates
                ? new NotEstimable(
                    NotEstimableKind.TooFewEvents, fit.Failures, $"Only {used} of {replicates} drawn sets could be fitted: too few failures.")
                : new GoodnessOfFit(distance, (larger + 1.0) / (used + 1), used);
        });
    }

    /// <summary>The largest distance between a distribution's cdf and the non-parametric estimate. Source: Kolmogorov 1933.</summary>
    internal static double Distance(LifeModel model, TurnbullEstimate estimate)
    {
        // Late entry: the estimate is conditional on reaching the first age observed.
        var origin = model.Cdf(estimate.ObservedFrom);
        double largest = 0, before = 0;
        foreach (var mass in estimate.Masses)
        {
            largest = Math.Max(largest, Math.Abs(Conditional(mass.Lower) - before));
            if (double.IsFinite(mass.Upper)) largest = Math.Max(largest, Math.Abs(Conditional(mass.Upper) - mass.Cdf));
            before = mass.Cdf;
        }

        return largest;

        double Conditional(double age) => (model.Cdf(age) - origin) / (1 - origin);
    }

    private static IEnumerable<(LifeModel Model, IReadOnlyList<Life> Lives)> Refits(LifeFit fit, IReadOnlyList<Life> lives, int seed, int replicates)
    {
        var random = new Random(seed);
        var resampling = new LifeResampling(fit.Model, lives);
        for (var i = 0; i < replicates; i++)
        {
            var drawn = resampling.Draw(random);
            var refit = fit.IsShapeGiven
                ? LifeFit.FitWithShape(fit.Distribution, fit.Model.Shape, drawn, fit.Confidence)
                : LifeFit.Fit(fit.Distribution, drawn, fit.Confidence);
            if (refit.IsEstimated) yield return (refit.Value.Model, drawn);
        }
    }
}
