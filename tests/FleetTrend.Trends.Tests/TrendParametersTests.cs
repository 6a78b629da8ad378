using System.Reflection;
using FleetTrend.Observations;

namespace FleetTrend.Trends.Tests;

public sealed class TrendParametersTests
{
    public static TheoryData<string> Names => [.. typeof(TrendParameters).GetProperties().Where(p => p.CanWrite).Select(p => p.Name)];

    [Theory] // By definition: a choice that changes nothing was not made, and says something untrue where it is published.
    [MemberData(nameof(Names))]
    public void Another_value_of_a_published_parameter_gives_other_trends(string name)
    {
        var property = typeof(TrendParameters).GetProperty(name, BindingFlags.Public | BindingFlags.Instance)!;
        object[] others = property.GetValue(new TrendParameters()) switch
        {
            int count => [count + 1000],
            double share and < 1 => [share / 1000, 0.999],
            double hours => [hours / 1000],
            var value => throw new NotSupportedException($"{name} is {value}: say here what another value of it is."),
        };
        // Of plain trouble, and of trouble that a level decides about.
        var fleets = new[] { 30, 4 }.Select(factor => new SimulatedFleet { Seed = 3, TroubleFactor = factor, SouthLifeFactor = 0.5, Jitter = 15 }.Build());
        Assert.Contains(fleets, fleet => others.Any(other =>
        {
            var changed = new TrendParameters();
            property.SetValue(changed, other);
            return Trends(fleet, new TrendParameters()) != Trends(fleet, changed);
        }));
    }

    private static string Trends(IReadOnlyList<AircraftObservations> fleet, TrendParameters parameters) => TrendSnapshotJson.Write(
        FleetBuilder.Compute(fleet, parameters, FleetBuilder.AsOf, "test") with { Parameters = new TrendParameters() });
}
