using FleetTrend.Trends.BackTests;

namespace FleetTrend.Cli.BackTests;

/// <summary>A type group of the JSON document.</summary>
internal sealed record BackTestGroup(
    string TypeGroup, DateOnly FirstDate, DateOnly LastDate, double AircraftYears, IReadOnlyList<BackTestMethod> Methods, IReadOnlyList<BackTestRow> Calls)
{
    /// <summary>The type group with the calls of every method.</summary>
    public static BackTestGroup From(BackTest test) => new(
        test.TypeGroup, test.FirstDate, test.LastDate, test.AircraftYears, test.Methods, [.. test.Calls.Concat(test.AlertCalls).Select(BackTestRow.From)]);
}
