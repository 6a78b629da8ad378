using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>An invented school with an invented fleet and planted trouble, as messages that any integrator could push.</summary>
public sealed record SyntheticFleet
{
    /// <summary>Name of the invented school, labelled as synthetic.</summary>
    public required string School { get; init; }

    /// <summary>The source that pushes the records.</summary>
    public required Source Source { get; init; }

    /// <summary>Its type groups.</summary>
    public required IReadOnlyList<TypeGroup> TypeGroups { get; init; }

    /// <summary>Its bases.</summary>
    public required IReadOnlyList<string> Bases { get; init; }

    /// <summary>All records; the aircraft first, then everything else by date.</summary>
    public required IReadOnlyList<Record> Records { get; init; }

    /// <summary>What the shop does about a flag half way.</summary>
    public required PlannedAction Action { get; init; }

    /// <summary>What was planted.</summary>
    public required IReadOnlyList<PlantedTrouble> Planted { get; init; }
}
