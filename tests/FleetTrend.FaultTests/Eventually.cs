using System.Diagnostics;

namespace FleetTrend.FaultTests;

/// <summary>Waits on a condition, with a limit.</summary>
internal static class Eventually
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(50);

    public static async Task TrueAsync(Func<Task<bool>> condition, TimeSpan patience, Func<string> describe)
    {
        var started = Stopwatch.GetTimestamp();
        while (!await condition())
        {
            Assert.True(Stopwatch.GetElapsedTime(started) < patience, describe());
            await Task.Delay(BetweenLooks);
        }
    }
}
