using FleetTrend.Records.Inspections;

namespace FleetTrend.Records.Findings;

/// <summary>A condition seen at a location. It is a look by itself, whether or not an inspection of that day lists the location.</summary>
public sealed record Finding : RecordContent
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>The day it was seen. When it arose lies between the last good look and this one.</summary>
    public required DateOnly FoundDate { get; init; }

    /// <summary>The aircraft's time in service then.</summary>
    public required Hours TimeInService { get; init; }

    /// <summary>What was seen.</summary>
    public required Condition Condition { get; init; }

    /// <summary>Whether it is a defect or was looked at and accepted; only a defect is an event or a failure.</summary>
    public FindingGrade Grade { get; init; } = FindingGrade.Defect;

    /// <summary>Length or depth in millimetres, where it has one.</summary>
    public double? SizeMillimetres { get; init; }

    /// <summary>Colour of a leak trace.</summary>
    public TraceColour TraceColour { get; init; }

    /// <summary>How it was found.</summary>
    public LookMethod Method { get; init; }

    /// <summary>Source record identifier of another finding of the same source that is the same event; null where it stands alone.</summary>
    public string? SameEventAs { get; init; }

    /// <summary>Free text for people.</summary>
    public string? Note { get; init; }

    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.Finding;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}
