using System.Globalization;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Text;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Requests;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Reports;

/// <summary>Reports as the contract writes them.</summary>
internal static class ReportMessages
{
    public static Wire.Report ToWire(this ReportSummary report) => new()
    {
        ReportId = Id(report.ReportId),
        Base = report.Base,
        PeriodStartDate = report.PeriodStart.ToWire(),
        PeriodEndDate = report.PeriodEnd.ToWire(),
        AsOfTime = report.AsOf.ToWire(),
        CodeVersion = report.CodeVersion,
        Subject = report.Subject,
        TypeGroup = report.TypeGroup ?? "",
    };

    public static Wire.Report ToWire(this StoredReport report) => new()
    {
        ReportId = Id(report.ReportId),
        Base = report.Base,
        PeriodStartDate = report.PeriodStart.ToWire(),
        PeriodEndDate = report.PeriodEnd.ToWire(),
        AsOfTime = report.AsOf.ToWire(),
        CodeVersion = report.CodeVersion,
        Subject = report.Subject,
        TypeGroup = report.TypeGroup ?? "",
        Text = report.Text,
        Html = HtmlWithPlots(report),
        WholeText = report.DocumentJson is { } document ? WholeText(document) : "",
    };

    public static Wire.ReportRequest ToWire(this StoredReportRequest request) => new()
    {
        RequestId = request.RequestId,
        RequestTime = request.RequestTime.ToWire(),
        PeriodStartDate = request.PeriodStart.ToWire(),
        PeriodEndDate = request.PeriodEnd.ToWire(),
        State = (Wire.ReportRequestState)request.State,
        Reports =
        {
            request.Reports.Select(report => new Wire.RequestedReport
            {
                ReportId = Id(report.ReportId),
                Base = report.Base,
                AsOfTime = report.AsOf.ToWire(),
                ExistedBefore = report.AsOf < request.RequestTime,
            }),
        },
        EndTime = request.EndTime?.ToWire(),
        AttemptCount = request.AttemptCount,
        Failure = request.Failure ?? "",
    };

    public static Wire.Mail ToWire(this StoredMail mail) => new()
    {
        MailId = Id(mail.MailId),
        ReportId = Id(mail.ReportId),
        Recipient = mail.Recipient,
        State = (Wire.MailState)mail.State,
        AttemptCount = mail.AttemptCount,
        OwedTime = mail.OwedTime.ToWire(),
        EndTime = mail.EndTime?.ToWire(),
        LastError = mail.LastError ?? "",
    };

    /// <summary>The HTML of the mail. There a plot is a part that the HTML points to; here there are no parts, so the image itself stands there.</summary>
    public static string HtmlWithPlots(StoredReport report) => report.Plots.Aggregate(
        report.Html,
        (html, plot) => html.Replace($"cid:{plot.Key}", $"data:image/png;base64,{Convert.ToBase64String(plot.Value)}", StringComparison.Ordinal));

    /// <summary>The whole of a stored report, of which the mail says a part, as plain text.</summary>
    public static string WholeText(string document) => TextReport.Render(ReportDocumentJson.Read(document));

    private static string Id(long id) => id.ToString(CultureInfo.InvariantCulture);
}
