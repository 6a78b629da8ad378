using System.Text.RegularExpressions;

namespace FleetTrend.TidyTests;

/// <summary>The structure that DEVELOPERS.md describes, as a test.</summary>
public partial class StructureTests
{
    private static readonly string[] TopLevel =
    [
        ".ci", ".editorconfig", ".gitignore", "DEVELOPERS.md", "Directory.Build.props", "Directory.Packages.props", "FleetTrend.sln",
        "LICENSE", "README.md", "deploy", "docker-compose.yml", "global.json", "protos", "src", "tests",
    ];

    [Fact]
    public void The_top_level_holds_what_it_should_and_nothing_else() =>
        Assert.Equal(
            TopLevel.Order(StringComparer.Ordinal),
            Repository.Files.Select(f => f.Split('/')[0]).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));

    [Fact]
    public void Project_references_are_the_arrows_in_DEVELOPERS()
    {
        var documented = Repository.Read("DEVELOPERS.md").Split('\n')
            .SkipWhile(l => l != "```arrows").Skip(1).TakeWhile(l => l != "```")
            .Select(l => l.Split(':', StringSplitOptions.TrimEntries))
            .ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal);
        var actual = Repository.Arrows().ToDictionary(a => a.Key, a => string.Join(' ', a.Value), StringComparer.Ordinal);
        Assert.Equal(documented.OrderBy(a => a.Key, StringComparer.Ordinal), actual.OrderBy(a => a.Key, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("src")]
    [InlineData("tests")]
    public void The_map_of_a_folder_names_what_is_there(string folder)
    {
        var named = PathInMap().Matches(Repository.Read($"{folder}/README.md")).Select(m => m.Groups["path"].Value).ToList();
        Assert.NotEmpty(named);
        Assert.All(named, path => Assert.True(Path.Exists(Path.Combine(Repository.Root, folder, path)), path));
    }

    [Theory]
    [InlineData("src")]
    [InlineData("tests")]
    public void The_map_of_a_folder_leaves_no_project_out(string folder)
    {
        var map = Repository.Read($"{folder}/README.md") + Repository.Read("DEVELOPERS.md");
        var projects = Repository.Files.Where(f => f.StartsWith($"{folder}/", StringComparison.Ordinal) && f.EndsWith(".csproj", StringComparison.Ordinal));
        Assert.All(projects, project => Assert.Contains($"`{Path.GetFileNameWithoutExtension(project)}`", map, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_project_is_in_the_solution()
    {
        var solution = Repository.Read("FleetTrend.sln").Replace('\\', '/');
        Assert.All(
            Repository.Files.Where(f => f.EndsWith(".csproj", StringComparison.Ordinal) && !f.StartsWith("protos/examples/", StringComparison.Ordinal)),
            project => Assert.Contains(project, solution, StringComparison.Ordinal));
    }

    [Fact]
    public void Trends_reads_no_raw_records()
    {
        string[] raw = ["AircraftHistory", "Recorded<", "Records.Inspections", "Records.Installations", "Records.Readings"];
        var files = Repository.Files.Where(f => f.StartsWith("src/FleetTrend.Trends/", StringComparison.Ordinal) && f.EndsWith(".cs", StringComparison.Ordinal));
        Assert.All(files, file => Assert.DoesNotContain(raw, word => Repository.Read(file).Contains(word, StringComparison.Ordinal)));
    }

    [GeneratedRegex(@"`(?<path>(FleetTrend\.|reference/|\.\./)[\w./-]+)`", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PathInMap();
}
