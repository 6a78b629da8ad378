using FleetTrend.Statistics.Lives;

namespace FleetTrend.Simulations;

/// <summary>How often the comparison of two groups calls a difference, without one and with one.</summary>
internal static class ComparisonSize
{
    private const int Sets = 2000;

    public static Section Section => new("Two groups compared (log-rank for interval-censored lives)", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine($"Lives as above, {Sets} pairs of groups per row; share of pairs called different at 5 %.");
        output.WriteLine();
        output.WriteLine("| lives per group | same distribution | scale of the second group 25 % less |");
        output.WriteLine("| ---: | ---: | ---: |");
        foreach (var size in (int[])[20, 60, 300]) output.WriteLine($"| {size} | {Called(size, 1)} | {Called(size, 0.75)} |");
    }

    private static string Called(int size, double factor)
    {
        var random = new Random(20251200 + size);
        var (called, tested) = (0, 0);
        for (var i = 0; i < Sets; i++)
        {
            var (a, b) = (LookedAtLives.Draw(random, size), LookedAtLives.Draw(random, size, LookedAtLives.Scale * factor));
            if (!LifeComparison.Compare([a, b]).TryGetValue(out var test)) continue;
            tested++;
            if (test.PValue < 0.05) called++;
        }

        return $"{100.0 * called / tested:F1} %";
    }
}
