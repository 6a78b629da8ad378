using System.Globalization;
using System.Text.RegularExpressions;

namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>A folder that holds the server programs of one PostgreSQL major version.</summary>
internal sealed partial record PostgresBinaries(string Folder, int Major)
{
    private static readonly string[] Programs = ["initdb", "pg_ctl", "postgres"];

    public string Path(string program) => System.IO.Path.Combine(Folder, program);

    /// <summary>The newest server found, or the newest one of <paramref name="major"/> when a cluster of that version
    /// exists already: a cluster opens only under the major version that made it.</summary>
    /// <exception cref="LocalPostgresException">No suitable programs; the message names what to install.</exception>
    public static async Task<PostgresBinaries> FindAsync(
        IReadOnlyList<string>? folders, int? major, CancellationToken ct)
    {
        var searched = folders ?? DefaultFolders();
        var found = new List<PostgresBinaries>();
        foreach (var folder in searched.Where(f => Programs.All(p => File.Exists(System.IO.Path.Combine(f, p)))))
        {
            if (await ReadMajorAsync(folder, ct) is { } version)
                found.Add(new PostgresBinaries(folder, version));
        }

        var best = found.Where(b => major is null || b.Major == major).MaxBy(b => b.Major);
        return best ?? throw new LocalPostgresException(major is { } needed && found.Count > 0
            ? $"The data folder holds a PostgreSQL {needed} cluster, but only server version "
              + $"{string.Join(", ", found.Select(b => b.Major).Distinct().Order())} is installed. "
              + $"Install PostgreSQL {needed} (Debian: apt-get install postgresql-{needed}), or set another data "
              + "folder in FLEETTREND_DATA."
            : "No PostgreSQL server programs (initdb, pg_ctl, postgres) were found. Install them (Debian, Ubuntu: "
              + "apt-get install postgresql; Fedora: dnf install postgresql-server), or give a running server in "
              + $"FLEETTREND_DATABASE. Searched: {string.Join(", ", searched)}.");
    }

    private static List<string> DefaultFolders()
    {
        var folders = new List<string>();
        folders.AddRange((Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(':', StringSplitOptions.RemoveEmptyEntries));
        folders.AddRange(VersionedFolders("/usr/lib/postgresql", "*"));
        folders.AddRange(VersionedFolders("/usr", "pgsql-*"));
        folders.Add("/usr/local/pgsql/bin");
        return [.. folders.Distinct(StringComparer.Ordinal)];
    }

    private static IEnumerable<string> VersionedFolders(string parent, string pattern) =>
        Directory.Exists(parent)
            ? Directory.EnumerateDirectories(parent, pattern).Select(f => System.IO.Path.Combine(f, "bin"))
            : [];

    private static async Task<int?> ReadMajorAsync(string folder, CancellationToken ct)
    {
        var result = await ServerCommand.RunAsync(
            ServerAccount.Self, System.IO.Path.Combine(folder, "postgres"), ["--version"], ct);
        var match = VersionText().Match(result.Output);
        return result.ExitCode == 0 && match.Success
            ? int.Parse(match.Groups["major"].ValueSpan, CultureInfo.InvariantCulture)
            : null;
    }

    [GeneratedRegex(@"\(PostgreSQL\) (?<major>\d+)", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex VersionText();
}
