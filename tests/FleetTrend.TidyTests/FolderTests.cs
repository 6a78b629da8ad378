using System.Xml.Linq;
using ArchUnitNET.Fluent.Slices;
using ArchUnitNET.Loader;

namespace FleetTrend.TidyTests;

/// <summary>
/// Folders of a project use each other one way only, so that one can be read, or taken out, without the rest. What lies beside the
/// folders is the project's own and does not count.
/// </summary>
public class FolderTests
{
    /// <summary>Projects that still have circles, and how many. An entry that is no longer needed fails: this list shrinks.</summary>
    private static readonly Dictionary<string, int> StillTied = new(StringComparer.Ordinal)
    {
        ["Store"] = 1, // rows and states
    };

    public static TheoryData<string> Projects() => [.. Repository.Arrows().Keys];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Folders_use_each_other_without_circles(string project)
    {
        var circles = Circles($"FleetTrend.{project}");
        var expected = StillTied.GetValueOrDefault(project);
        Assert.True(circles.Count == expected, $"{circles.Count} circles, {expected} expected.\n{string.Join('\n', circles)}");
    }

    [Fact]
    public void No_entry_of_the_list_is_of_a_project_that_is_gone() => Assert.Subset(Repository.Arrows().Keys.ToHashSet(), StillTied.Keys.ToHashSet());

    /// <summary>Read from the compiled assembly, where no using directive can hide a type.</summary>
    private static List<string> Circles(string name)
    {
        var assembly = XDocument.Parse(Repository.Read($"src/{name}/{name}.csproj")).Descendants("AssemblyName").SingleOrDefault()?.Value ?? name;
        var built = new ArchLoader().LoadFilteredDirectory(AppContext.BaseDirectory, $"{assembly}.dll").Build();
        Assert.NotEmpty(built.Types);
        var rule = SliceRuleDefinition.Slices().Matching($"{name}.(**)").Should().BeFreeOfCycles();
        return [.. rule.Evaluate(built).Where(r => !r.Passed).Select(r => r.Description)];
    }
}
