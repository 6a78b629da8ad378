using FleetTrend.Hosting.Configuration;

namespace FleetTrend.Hosting.Tests.Configuration;

public sealed class SettingNamesTests
{
    [Fact]
    public void The_operators_guide_describes_every_setting()
    {
        var guide = File.ReadAllText(Path.Combine(TreeRoot(), "deploy", "README.md"));

        Assert.All(SettingNames.All, name => Assert.Contains($"`{name}`", guide, StringComparison.Ordinal));
    }

    private static string TreeRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "FleetTrend.sln")))
            folder = Path.GetDirectoryName(folder.TrimEnd('/')) ?? throw new InvalidOperationException("No tree above.");
        return folder;
    }
}
