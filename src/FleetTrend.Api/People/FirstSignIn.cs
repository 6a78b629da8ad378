using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Store.People;

namespace FleetTrend.Api.People;

/// <summary>The one-time link of a new installation, with which somebody becomes the administrator. It stands in a file that only the owner
/// can read, never in the log.</summary>
public static class FirstSignIn
{
    /// <summary>The page that it leads to.</summary>
    public const string Page = "/first-sign-in";

    private const string FileName = "first-sign-in.link";
    private const string Query = Page + "?token=";

    /// <summary>Where it is written.</summary>
    public static string PathIn(HostSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return Path.GetFullPath(Path.Combine(settings.DataFolder, FileName));
    }

    /// <summary>Writes the link where nobody can administer yet; one that is good stays. The demo, whose visitor is signed in, needs none.</summary>
    /// <exception cref="IOException">The file cannot be written; then there is no link either.</exception>
    internal static async Task OfferAsync(IServiceProvider services, CancellationToken ct)
    {
        var settings = services.GetRequiredService<HostSettings>();
        if (settings.DemoDirector)
            return;
        var path = PathIn(settings);
        var needed = await services.GetRequiredService<FirstLinks>().OfferAsync(
            await ReadAsync(path, ct), token => WriteAsync(path, settings.PublicUrl + Query + token, ct), ct);
        if (needed)
        {
            var log = services.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(FirstSignIn).FullName!);
            ApiLog.FirstLinkWritten(log, path, FirstLinks.Lasts.TotalHours);
        }
    }

    /// <summary>Removes the file of a link that was used; another server's is good for nothing any more.</summary>
    internal static void Remove(HostSettings settings)
    {
        try
        {
            File.Delete(PathIn(settings));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The link in it is used up, so it may stay.
        }
    }

    private static async Task<string?> ReadAsync(string path, CancellationToken ct)
    {
        if (!File.Exists(path))
            return null;
        var link = (await File.ReadAllTextAsync(path, ct)).Trim();
        var at = link.IndexOf(Query, StringComparison.Ordinal);
        return at < 0 ? null : link[(at + Query.Length)..];
    }

    private static async Task WriteAsync(string path, string link, CancellationToken ct)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            await using var file = new StreamWriter(OwnerOnly.CreateFile(path));
            await file.WriteLineAsync(link.AsMemory(), ct);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new IOException($"The first sign-in link cannot be written to '{path}'; {SettingNames.DataFolder} names the folder. {e.Message}", e);
        }
    }
}
