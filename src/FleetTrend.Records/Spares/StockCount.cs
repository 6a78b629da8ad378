namespace FleetTrend.Records.Spares;

/// <summary>How many spares of a part number lay at a base at the end of a day. It belongs to no aircraft; of one base and part number the newest day
/// counts.</summary>
public sealed record StockCount : RecordContent
{
    /// <summary>Most parts of a count.</summary>
    public const int MaxQuantity = 100_000;

    /// <summary>Longest lead time, days.</summary>
    public const int MaxLeadTimeDays = 1_000;

    /// <summary>The day of the count.</summary>
    public required DateOnly CountDate { get; init; }

    /// <summary>The base.</summary>
    public required string Base { get; init; }

    /// <summary>Part number or trade description, as installations have it.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Parts fit to go in, whole parts.</summary>
    public required int Quantity { get; init; }

    /// <summary>Days from an order to its delivery; null where not told.</summary>
    public int? LeadTimeDays { get; init; }

    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.StockCount;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}
