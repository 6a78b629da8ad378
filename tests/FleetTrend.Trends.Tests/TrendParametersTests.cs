using System.Reflection;

namespace FleetTrend.Trends.Tests;

public sealed class TrendParametersTests
{
    public static TheoryData<string> Names => [.. typeof(TrendParameters).GetProperties().Where(p => p.CanWrite).Select(p => p.Name)];

    [Theory] // By definition: a choice that changes nothing was not made, and says something untrue where it is published.
    [MemberData(nameof(Names))]
    public void Another_value_of_a_published_parameter_gives_other_trends(string name)
    {
        var fleet = new SimulatedFleet { Seed = 3, TroubleFactor = 30, SouthLifeFactor = 0.5, Jitter = 15 }.Build();
        var (usual, other) = (new TrendParameters(), new TrendParameters());
        var property = typeof(TrendParameters).GetProperty(name, BindingFlags.Public | BindingFlags.Instance)!;
        property.SetValue(other, property.GetValue(usual) switch
        {
            int count => (object)(count + 1000),
            double share and < 1 => (1 + share) / 2,
            double hours => hours / 1000,
            var value => throw new NotSupportedException($"{name} is {value}: say here what another value of it is."),
        });
        Assert.NotEqual(Trends(usual), Trends(other));

        string Trends(TrendParameters parameters) => TrendSnapshotJson.Write(
            FleetBuilder.Compute(fleet, parameters, FleetBuilder.AsOf, "test") with { Parameters = new TrendParameters() });
    }
}
