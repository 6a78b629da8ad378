namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>practice_changes</c>.</summary>
internal sealed class PracticeChangeRow
{
    public long RecordId { get; set; }

    public DateOnly ChangeDate { get; set; }

    public string? Base { get; set; }

    public string? TypeGroup { get; set; }

    public string[] Locations { get; set; } = [];

    public string? PartNumber { get; set; }

    public string What { get; set; } = "";

    public string? Why { get; set; }
}
