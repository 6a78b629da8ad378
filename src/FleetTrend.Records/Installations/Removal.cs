namespace FleetTrend.Records.Installations;

/// <summary>A part came out of a location: the life there ends.</summary>
public sealed record Removal : RecordContent
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly RemovalDate { get; init; }

    /// <summary>The aircraft's time in service then.</summary>
    public required Hours TimeInService { get; init; }

    /// <summary>Why it came out; anything but <see cref="RemovalReason.Failed"/> right-censors the life.</summary>
    public required RemovalReason Reason { get; init; }

    /// <summary>True where the part was examined at removal and found good; its life then reaches to the removal.</summary>
    public bool ExaminedGood { get; init; }

    /// <summary>The part's serial number where it has one.</summary>
    public string? SerialNumber { get; init; }

    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.Removal;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}
