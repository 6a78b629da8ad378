namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>assignments</c>.</summary>
internal sealed class AssignmentRow
{
    public long RecordId { get; set; }

    public DateOnly FromDate { get; set; }

    public string Base { get; set; } = "";

    public int TypeGroupId { get; set; }
}
