using FleetTrend.Intake;
using FleetTrend.Records.Findings;
using Domain = FleetTrend.Records.Layouts;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Layouts;

/// <summary>Layouts as the contract writes them.</summary>
internal static class LayoutMessages
{
    public static Wire.Layout ToWire(this Domain.Layout layout) => new()
    {
        Name = layout.Name,
        Title = layout.Title,
        Locations =
        {
            layout.Locations.Select(l => new Wire.Location { Path = l.Path, Kind = l.Kind.Name, LookFor = l.LookFor, JascCode = l.JascCode ?? "" }),
        },
    };

    public static Wire.TypeGroup ToWire(this Domain.TypeGroup group) =>
        new() { Name = group.Name, Title = group.Title, Layout = group.Layout };

    public static Wire.LocationKind ToWire(this Domain.LocationKind kind) => new()
    {
        Name = kind.Name,
        Title = kind.Title,
        LookFor = kind.LookFor,
        JascCode = kind.JascCode ?? "",
        HasLife = kind.HasLife,
        Conditions = { kind.Conditions.Select(Word) },
        FailureConditions = { kind.Failures.Select(Word) },
        WatchedConditions = { kind.Watched.Select(Word) },
        Checks = { kind.Checks.Select(c => new Wire.ConditionChecks { Condition = Word(c.Condition), Lines = { c.Lines } }) },
        BaseChecks = { kind.BaseChecks },
    };

    private static string Word(Condition condition) => ContractWords.Write((Wire.Condition)condition);
}
