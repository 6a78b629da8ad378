using FleetTrend.Statistics;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Simulations;

/// <summary>Coverage of the Weibull fit's profile intervals.</summary>
internal static class LifeCoverage
{
    private const int Sets = 4000;

    public static Section Section => new("Weibull lives found failed at looks", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine(
            $"Truth: Weibull, shape {LookedAtLives.Shape}, scale {LookedAtLives.Scale} h. Looks every 70 to 130 h; half of the lives first seen with");
        output.WriteLine($"0 to 800 h; followed for 300 to 1,200 h. {Sets} sets per row (error of a share about 0.3 points). Profile-likelihood intervals at 95 %.");
        output.WriteLine();
        output.WriteLine("| lives | failures (mean) | shape | scale | B10 | failing in the next 100 h at 500 h | bias of ln shape | bias of ln scale | not estimable |");
        output.WriteLine("| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var size in (int[])[20, 60, 300]) output.WriteLine(Row(size));
        output.WriteLine();
        output.WriteLine("With 20 lives (about 13 failures) the chi-square limit of the likelihood ratio is an approximation, and the shape's estimate lies");
        output.WriteLine("high, as is known of maximum likelihood in small samples; the intervals allow for most of it.");
    }

    private static string Row(int size)
    {
        var random = new Random(20251100 + size);
        var truth = new LifeModel(LifeDistribution.Weibull, LookedAtLives.Scale, LookedAtLives.Shape);
        var (fitted, failures) = (0, 0L);
        var held = new int[4];
        double biasShape = 0, biasScale = 0;
        for (var i = 0; i < Sets; i++)
        {
            if (!LifeFit.Fit(LifeDistribution.Weibull, LookedAtLives.Draw(random, size)).TryGetValue(out var fit)) continue;
            fitted++;
            failures += fit.Failures;
            biasShape += Math.Log(fit.Model.Shape / truth.Shape);
            biasScale += Math.Log(fit.Model.Scale / truth.Scale);
            Count(0, fit.Shape.Interval, truth.Shape);
            Count(1, fit.Scale.Interval, truth.Scale);
            Count(2, fit.Quantile(0.1).Interval, truth.Quantile(0.1));
            Count(3, fit.ConditionalFailure(500, 100).Interval, truth.ConditionalFailure(500, 100));
        }

        return $"| {size} | {(double)failures / fitted:F1} | {Share(0)} | {Share(1)} | {Share(2)} | {Share(3)} "
            + $"| {biasShape / fitted:F3} | {biasScale / fitted:F3} | {Sets - fitted} |";

        void Count(int which, Interval interval, double value) => held[which] += interval.Contains(value) ? 1 : 0;

        string Share(int which) => $"{100.0 * held[which] / fitted:F1} %";
    }
}
