namespace FleetTrend.Records.Inspections;

/// <summary>One visit of one aircraft, and what was and was not looked at.</summary>
public sealed record Inspection : RecordContent
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly InspectionDate { get; init; }

    /// <summary>The aircraft's time in service then.</summary>
    public required Hours TimeInService { get; init; }

    /// <summary>What the visit was for.</summary>
    public required Occasion Occasion { get; init; }

    /// <summary>A line per location; each location at most once. A location without a line says nothing.</summary>
    public required IReadOnlyList<LocationLook> Looks { get; init; }

    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.Inspection;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}
