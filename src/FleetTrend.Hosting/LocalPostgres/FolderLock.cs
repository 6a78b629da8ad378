namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>An advisory lock on a file. The kernel releases it when the holder ends, however it ends.</summary>
internal static class FolderLock
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    /// <summary>A lock that others may share. Fails only against an exclusive holder.</summary>
    public static FileStream Share(string path) => Open(path, FileShare.ReadWrite);

    /// <summary>A lock that nobody shares, or null when somebody holds it.</summary>
    public static FileStream? TryTake(string path)
    {
        try
        {
            return Open(path, FileShare.None);
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>Waits for a lock that nobody shares.</summary>
    /// <exception cref="LocalPostgresException">Not had within <paramref name="limit"/>.</exception>
    public static async Task<FileStream> TakeAsync(string path, TimeSpan limit, CancellationToken ct)
    {
        var end = TimeProvider.System.GetUtcNow() + limit;
        while (true)
        {
            if (TryTake(path) is { } taken)
                return taken;
            if (TimeProvider.System.GetUtcNow() > end)
            {
                throw new LocalPostgresException(
                    $"Another process has been starting or stopping the local PostgreSQL for {limit.TotalSeconds:0} s "
                    + $"and still holds '{path}'.");
            }
            await Task.Delay(Pause, ct);
        }
    }

    private static FileStream Open(string path, FileShare share)
    {
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, share);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new LocalPostgresException(
                $"'{path}' belongs to another user. Start the product as that user or set another data folder in "
                + "FLEETTREND_DATA.", e);
        }
    }
}
