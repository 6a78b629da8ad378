namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>finding_merges</c>: one decision, never changed. An undo is a row of its own.</summary>
internal sealed class FindingMergeRow
{
    public long Id { get; set; }

    public int MergedSourceId { get; set; }

    public string MergedRecordId { get; set; } = "";

    public int KeptSourceId { get; set; }

    public string KeptRecordId { get; set; } = "";

    /// <summary>True where the two are one event from then on, false where they are two again.</summary>
    public bool IsMerged { get; set; }

    public string DecidedBy { get; set; } = "";

    public string Note { get; set; } = "";

    public DateTimeOffset DecideTime { get; set; }
}
