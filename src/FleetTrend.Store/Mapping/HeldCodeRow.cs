namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>held_codes</c>: a code in a record that is held, whether or not it has a meaning.</summary>
internal sealed class HeldCodeRow
{
    public long HeldRecordId { get; set; }

    public short Kind { get; set; }

    public string Code { get; set; } = "";
}
