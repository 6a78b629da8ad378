namespace FleetTrend.Records.Installations;

/// <summary>A part went in at a location: a new life starts there.</summary>
public sealed record Installation : RecordContent
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location, such as <c>exhaust/cyl-3/gasket</c>.</summary>
    public required string Location { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly InstallationDate { get; init; }

    /// <summary>The aircraft's time in service then.</summary>
    public required Hours TimeInService { get; init; }

    /// <summary>Hours already on the part: zero for new, null for unknown (then its life takes no part in a life fit).</summary>
    public Hours? PartHours { get; init; }

    /// <summary>The part's serial number where it has one; it carries its hours from one aircraft to another.</summary>
    public string? SerialNumber { get; init; }

    /// <summary>Part number or trade description, for people.</summary>
    public string? PartNumber { get; init; }

    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.Installation;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}
