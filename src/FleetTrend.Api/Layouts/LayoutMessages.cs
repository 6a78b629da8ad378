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
            layout.Locations.Select(l => new Wire.Location { Path = l.Path, Kind = l.Kind, LookFor = l.LookFor, JascCode = l.JascCode ?? "" }),
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
        Conditions = { kind.Conditions.Select(EnumName) },
        FailureConditions = { kind.Failures.Select(EnumName) },
    };

    private static string EnumName(Condition condition)
    {
        var value = Wire.FindingReflection.Descriptor.FindTypeByName<Google.Protobuf.Reflection.EnumDescriptor>("Condition")
            .FindValueByNumber((int)condition);
        return value.Name;
    }
}
