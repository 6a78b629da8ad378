namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>held_records</c>: a record that waits, or has waited. Rows stay, so that what waited at a moment can be told later.</summary>
internal sealed class HeldRecordRow
{
    public long Id { get; set; }

    public int SourceId { get; set; }

    public string SourceRecordId { get; set; } = "";

    public int Revision { get; set; }

    public string Registration { get; set; } = "";

    /// <summary>The record as it was sent; only intake can read it.</summary>
    public byte[] Record { get; set; } = [];

    public byte[] ContentHash { get; set; } = [];

    public DateTimeOffset HoldTime { get; set; }

    /// <summary>When it was accepted; null while it waits.</summary>
    public DateTimeOffset? ReleaseTime { get; set; }

    /// <summary>When it was last tried and did not pass the rules; null before the first time.</summary>
    public DateTimeOffset? AttemptTime { get; set; }
}
