namespace FleetTrend.Records.Sources;

/// <summary>Takes a record back: from its acceptance on, the record of that source and identifier counts as never pushed.</summary>
/// <param name="Reason">Why, for people.</param>
public sealed record Retraction(string Reason) : RecordContent
{
    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.Retraction;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}
