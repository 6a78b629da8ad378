using System.Diagnostics;
using System.Xml.Linq;

namespace FleetTrend.TidyTests;

/// <summary>The checked-out tree, found from where the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    /// <summary>Files that git tracks or would track, relative to the root, with forward slashes.</summary>
    public static IReadOnlyList<string> Files { get; } = ListFiles();

    public static string Read(string file) => File.ReadAllText(Path.Combine(Root, file));

    /// <summary>Project references of each project in src, without the common prefix.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<string>> Arrows() =>
        Files.Where(f => f.StartsWith("src/", StringComparison.Ordinal) && f.EndsWith(".csproj", StringComparison.Ordinal))
            .ToDictionary(
                ShortName,
                f => (IReadOnlyList<string>)[.. XDocument.Parse(Read(f)).Descendants("ProjectReference")
                    .Select(r => ShortName(r.Attribute("Include")!.Value)).Order(StringComparer.Ordinal)],
                StringComparer.Ordinal);

    private static string ShortName(string project) =>
        Path.GetFileNameWithoutExtension(project).Replace("FleetTrend.", string.Empty, StringComparison.Ordinal);

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "FleetTrend.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests run outside a checkout.");
    }

    private static List<string> ListFiles()
    {
        using var git = Process.Start(new ProcessStartInfo("git", "ls-files --cached --others --exclude-standard")
        {
            WorkingDirectory = Root,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        })!;
        var files = git.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        git.WaitForExit();
        return git.ExitCode == 0
            ? [.. files.Where(f => File.Exists(Path.Combine(Root, f)))]
            : throw new InvalidOperationException("git could not list the files.");
    }
}
