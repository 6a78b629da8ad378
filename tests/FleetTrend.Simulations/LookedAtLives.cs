using FleetTrend.Statistics.Lives;

namespace FleetTrend.Simulations;

/// <summary>Weibull lives of parts looked at about every 100 h, half of them first seen with age.</summary>
internal static class LookedAtLives
{
    public const double Shape = 2.2;
    public const double Scale = 900;

    public static List<Life> Draw(Random random, int count, double scale = Scale)
    {
        var lives = new List<Life>(count);
        while (lives.Count < count)
        {
            var entry = lives.Count % 2 == 0 ? 0 : Math.Round(random.NextDouble() * 800, 1);
            var age = scale * Math.Pow(Math.Pow(entry / scale, Shape) - Math.Log(1 - random.NextDouble()), 1 / Shape);
            var end = entry + 300 + (random.NextDouble() * 900);
            var (lower, upper) = (entry, entry);
            while (upper < age && upper < end) (lower, upper) = (upper, Math.Round(upper + 70 + (random.NextDouble() * 60), 1));
            lives.Add(upper >= age && upper > lower ? Life.FailedBetween(lower, upper, entry) : Life.GoodAt(upper, entry));
        }

        return lives;
    }
}
