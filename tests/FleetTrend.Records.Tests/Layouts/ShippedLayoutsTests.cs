using System.Text.RegularExpressions;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Records.Tests.Layouts;

/// <summary>What each arrangement has is common practice, no source.</summary>
public sealed partial class ShippedLayoutsTests
{
    [Fact]
    public void There_is_one_for_each_arrangement()
    {
        string[] expected =
        [
            "four-cylinder-muffler-clamp", "four-cylinder-muffler-slip", "four-cylinder-straight-clamp", "four-cylinder-straight-slip",
            "six-cylinder-muffler-clamp", "six-cylinder-muffler-slip", "six-cylinder-straight-clamp", "six-cylinder-straight-slip",
        ];

        Assert.Equal(expected, ShippedLayouts.All.Select(layout => layout.Name));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_cylinder_has_its_exhaust_and_its_induction(string name)
    {
        var kinds = Find(name).Locations.ToLookup(location => location.Kind.Name, StringComparer.Ordinal);
        var cylinders = name.StartsWith("four", StringComparison.Ordinal) ? 4 : 6;

        foreach (var kind in new[] { "flange-weld", "gasket", "port-face", "intake-gasket", "coupling", "tube", "tube-flange" })
            Assert.Equal(cylinders, kinds[kind].Count());
        Assert.NotEmpty(kinds["y-weld"]);
        Assert.NotEmpty(kinds["hose-clamp"]);
        Assert.NotEmpty(kinds["tailpipe-weld"]);
        Assert.NotEmpty(kinds["hanger"]);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Muffler_shroud_and_joints_are_there_where_the_name_says_so(string name)
    {
        var kinds = Find(name).Locations.ToLookup(location => location.Kind.Name, StringComparer.Ordinal);
        var isMuffled = name.Contains("muffler", StringComparison.Ordinal);

        foreach (var kind in new[] { "muffler-shell", "muffler-baffle", "shroud-edge" })
            Assert.Equal(isMuffled, kinds[kind].Any());
        Assert.Equal(name.EndsWith("slip", StringComparison.Ordinal), kinds["slip-joint"].Any());
        if (name.EndsWith("clamp", StringComparison.Ordinal))
            Assert.Equal(kinds["clamp"].Count(), kinds["clamp-bolt"].Count());
    }

    [Fact]
    public void Paths_are_well_formed_stand_once_and_have_one_kind_everywhere()
    {
        foreach (var layout in ShippedLayouts.All)
        {
            Assert.Equal(layout.Locations.Count, layout.Locations.Select(location => location.Path).Distinct().Count());
            Assert.All(layout.Locations, location => Assert.Matches(Path(), location.Path));
        }

        var kinds = ShippedLayouts.All.SelectMany(layout => layout.Locations).GroupBy(location => location.Path, location => location.Kind);
        Assert.All(kinds, path => Assert.Single(path.Distinct()));
    }

    [Fact]
    public void Every_location_has_a_kind_a_code_and_a_line_on_what_to_look_for()
    {
        foreach (var location in ShippedLayouts.All.SelectMany(layout => layout.Locations))
        {
            Assert.Contains(location.Kind, ShippedKinds.All);
            Assert.InRange(location.LookFor.Length, 10, 160);
            Assert.DoesNotContain('\n', location.LookFor);
            Assert.Matches("^[0-9]{4}$", location.JascCode); // form of a code: FAA JASC table, 2008
        }
    }

    public static TheoryData<string> Names() => [.. ShippedLayouts.All.Select(layout => layout.Name)];

    private static Layout Find(string name) => ShippedLayouts.All.Single(layout => layout.Name == name);

    [GeneratedRegex("^[a-z0-9-]+(/[a-z0-9-]+){1,3}$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Path();
}
