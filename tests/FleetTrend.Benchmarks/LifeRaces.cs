using FleetTrend.Statistics.Lives;

namespace FleetTrend.Benchmarks;

/// <summary>Races on lives.</summary>
internal static class LifeRaces
{
    public static IEnumerable<Race> All =>
    [
        new()
        {
            Name = "Weibull, interval-censored",
            File = "intervals",
            Rows = 1_000_000,
            RTask = "weibull-survreg",
            Floor = 10,
            Prepare = file => Weibull(file, withErrors: false),
            Disagreement = Race.Within(1e-6),
        },
        new()
        {
            Name = "Weibull, interval-censored, late entry",
            File = "lives",
            Rows = 1_000_000,
            RTask = "weibull-optim",
            Floor = 20,
            Prepare = file => Weibull(file, withErrors: true),
            Disagreement = Race.Within(1e-4), // R's errors come from differences
        },
        Turnbull(10_000),
        Turnbull(100_000),
    ];

    /// <summary>The lives of a file.</summary>
    public static Life[] Lives(PerformanceFile file)
    {
        var (lower, upper) = (file["lower"], file["upper"]);
        var entry = file.Has("entry") ? file["entry"] : new double[lower.Length];
        return [.. Enumerable.Range(0, lower.Length).Select(i => new Life(lower[i], upper[i], entry[i]))];
    }

    private static Func<double[]> Weibull(PerformanceFile file, bool withErrors)
    {
        var lives = Lives(file);
        return () =>
        {
            var fit = LifeFit.Fit(LifeDistribution.Weibull, lives).Value;
            double[] values = [fit.Model.Shape, fit.Model.Scale, fit.LogLikelihood];
            return withErrors
                ? [.. values, fit.Model.Shape * Math.Sqrt(fit.LogCovariance.LogShape), fit.Model.Scale * Math.Sqrt(fit.LogCovariance.LogScale)]
                : values;
        };
    }

    /// <summary>Values: log-likelihood, gap, survival at 300, 600, 900 and 1200 h.</summary>
    private static Race Turnbull(int rows) => new()
    {
        Name = "Non-parametric (Turnbull)",
        File = "intervals",
        Rows = rows,
        RTask = "npsurv",
        Floor = rows == 100_000 ? 50 : 1, // 10^5 rows hold the 10^4 distinct intervals of the target
        Prepare = file =>
        {
            var lives = Lives(file);
            return () =>
            {
                var estimate = TurnbullEstimate.Estimate(lives).Value;
                double[] survival = [.. new double[] { 300, 600, 900, 1200 }.Select(t => 1 - estimate.CdfBounds(t).Least)];
                return [estimate.LogLikelihood, estimate.Gap, .. survival];
            };
        },
        Disagreement = (ours, theirs) =>
            ours[1] > theirs[1] ? $"our gap {ours[1]:G3} is above R's {theirs[1]:G3}"
            : Math.Abs(ours[0] - theirs[0]) > Math.Max(1e-6, theirs[1]) ? $"log-likelihood {ours[0]:R}, R {theirs[0]:R}"
            : null,
    };
}
