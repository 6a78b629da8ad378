namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>report_deliveries</c>: this report is owed to this person, or was. Rows stay for ever, also when their mails are removed,
/// so that nobody gets a report twice.</summary>
internal sealed class ReportDeliveryRow
{
    public long ReportId { get; set; }

    /// <summary>Mail address in lower case.</summary>
    public string Recipient { get; set; } = "";
}
