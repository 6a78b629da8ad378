namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>schedule_recipients</c>.</summary>
internal sealed class ScheduleRecipientRow
{
    public long ScheduleId { get; set; }

    public string Address { get; set; } = "";
}
