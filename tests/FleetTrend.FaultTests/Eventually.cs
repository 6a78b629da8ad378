using System.Diagnostics;

namespace FleetTrend.FaultTests;

/// <summary>Waits on a condition, with a limit.</summary>
internal static class Eventually
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(50);

    public static async Task TrueAsync(Func<Task<bool>> condition, TimeSpan patience, Func<string> otherwise)
    {
        var started = Stopwatch.GetTimestamp();
        while (!await condition())
        {
            Assert.True(Stopwatch.GetElapsedTime(started) < patience, otherwise());
            await Task.Delay(BetweenLooks);
        }
    }
}
