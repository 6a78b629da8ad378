using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>Weibull lives found failed at looks only, some first seen with age; seeded.</summary>
internal static class SimulatedLives
{
    /// <param name="seed">Seed.</param>
    /// <param name="count">Lives.</param>
    /// <param name="shape">Weibull shape.</param>
    /// <param name="scale">Weibull scale, hours.</param>
    /// <param name="look">Mean hours between looks, a share of the scale.</param>
    /// <param name="late">Share first seen with age.</param>
    public static List<Life> Make(int seed, int count, double shape, double scale, double look = 0.1, double late = 0.5)
    {
        var random = new Random(seed);
        var lives = new List<Life>();
        while (lives.Count < count)
        {
            var entry = random.NextDouble() < late ? scale * random.NextDouble() : 0;
            var life = scale * Math.Pow(Math.Pow(entry / scale, shape) - Math.Log(1 - random.NextDouble()), 1 / shape);
            var end = entry + (scale * 1.5 * random.NextDouble());
            var (lower, upper) = (entry, entry);
            while (upper < life && upper < end)
            {
                lower = upper;
                upper += scale * look * (0.5 + random.NextDouble());
            }

            lives.Add(upper >= life && upper > lower ? new Life(lower, upper, entry) : new Life(upper, double.PositiveInfinity, entry));
        }

        return lives;
    }
}
