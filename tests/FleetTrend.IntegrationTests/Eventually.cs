namespace FleetTrend.IntegrationTests;

/// <summary>Waits for what another part of the system does on its own.</summary>
internal static class Eventually
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    /// <summary>Asks until it is so; fails after 30 seconds.</summary>
    public static async Task TrueAsync(Func<Task<bool>> condition)
    {
        using var limit = new CancellationTokenSource(Patience);
        while (!await condition())
            limit.Token.ThrowIfCancellationRequested();
    }
}
