namespace FleetTrend.Records.Actions;

/// <summary>What was done at a location. On its day it comes after the findings of that day.</summary>
public sealed record CorrectiveAction : RecordContent
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly ActionDate { get; init; }

    /// <summary>The aircraft's time in service then.</summary>
    public required Hours TimeInService { get; init; }

    /// <summary>What was done.</summary>
    public required ActionKind Kind { get; init; }

    /// <summary>Hours on the part that went in, for <see cref="ActionKind.Replaced"/>: zero where new (the default); null elsewhere.</summary>
    public Hours? PartHours { get; init; }

    /// <summary>Free text for people.</summary>
    public string? Note { get; init; }

    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.Action;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}
