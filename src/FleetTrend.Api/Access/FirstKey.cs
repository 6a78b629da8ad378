using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Store.Keys;

namespace FleetTrend.Api.Access;

/// <summary>The key that a new installation begins with: it administers, and stands in a file that only the owner can read.</summary>
public static class FirstKey
{
    private const string FileName = "administer.key";

    /// <summary>Where it is written.</summary>
    public static string PathIn(HostSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Path.GetFullPath(Path.Combine(settings.DataFolder, FileName));
    }

    /// <summary>Makes the first key where there is none yet, even a revoked one; of several processes one does it.</summary>
    /// <exception cref="IOException">The file cannot be written; then there is no key either.</exception>
    internal static async Task MakeAsync(IServiceProvider services, CancellationToken ct)
    {
        var path = PathIn(services.GetRequiredService<HostSettings>());
        var made = await services.GetRequiredService<KeyStore>().AddFirstAsync("first key", key => WriteAsync(path, key, ct), ct);
        if (made is not null)
            ApiLog.FirstKeyMade(services.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(FirstKey).FullName!), made.Id, path);
    }

    private static async Task WriteAsync(string path, NewKey key, CancellationToken ct)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            await using var file = new StreamWriter(OwnerOnly.CreateFile(path)); // in place of a key of a database that is gone
            await file.WriteLineAsync(key.Text.AsMemory(), ct);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new IOException($"The first key cannot be written to '{path}'; {SettingNames.DataFolder} names the folder. {e.Message}", e);
        }
    }
}
