namespace FleetTrend.Trends.PartNumbers;

/// <summary>The part numbers of one kind of part on a type group, beside each other.</summary>
public sealed record PartNumberTrend
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Name of the kind of part.</summary>
    public required string Kind { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>Lives of known age whose part number is not on record: they are in no comparison.</summary>
    public required int NotTold { get; init; }

    /// <summary>The part numbers, the one with the most lives first.</summary>
    public required IReadOnlyList<PartNumberLives> Numbers { get; init; }

    /// <summary>Each two of them compared, by how long they last and by how many fail early; empty where there is one number only.</summary>
    public required IReadOnlyList<PartNumberComparison> Comparisons { get; init; }
}
