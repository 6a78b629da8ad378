using System.Globalization;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Pdf;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using MimeKit;

namespace FleetTrend.Worker.Mail;

/// <summary>Makes the message of a mail that is owed: plain text, HTML with the plots that it shows as inline images, and a PDF for the wall.</summary>
public sealed class MailComposer(ReportStore reports, MailSettings settings)
{
    /// <summary>The message; the same mail gives the same message at every attempt.</summary>
    /// <exception cref="InvalidOperationException">The mail's report is gone; the database does not let that happen.</exception>
    public async Task<MimeMessage> ComposeAsync(DueMail mail, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(mail);
        var report = await reports.GetAsync(mail.ReportId, ct)
            ?? throw new InvalidOperationException($"Mail {mail.MailId} is about report {mail.ReportId}, which is not there.");
        var from = new MailboxAddress("FleetTrend", settings.From);
        var body = new BodyBuilder { TextBody = report.Text, HtmlBody = report.Html };
        foreach (var (name, png) in report.Plots.Where(p => report.Html.Contains($"cid:{p.Key}", StringComparison.Ordinal)).OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            // A content identifier is unique in the world, as a message identifier is.
            var image = body.LinkedResources.Add(name, png, ContentType.Parse("image/png"));
            image.ContentId = $"report-{report.ReportId}.{name}@{from.Domain}";
            body.HtmlBody = body.HtmlBody.Replace($"cid:{name}", $"cid:{image.ContentId}", StringComparison.Ordinal);
        }

        // Made from what is stored, so that every attempt has the same bytes.
        if (report.DocumentJson is { } document)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"fleettrend-report-{report.PeriodEnd:yyyy-MM-dd}.pdf");
            body.Attachments.Add(name, ReportPdf.Render(ReportDocumentJson.Read(document), report.AsOf), ContentType.Parse("application/pdf"));
        }

        var message = new MimeMessage
        {
            MessageId = mail.MessageId,
            Date = report.AsOf,
            Subject = report.Subject,
            Body = body.ToMessageBody(),
        };
        message.From.Add(from);
        message.To.Add(MailboxAddress.Parse(mail.Recipient));
        message.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
        message.Headers.Add(HeaderId.ListUnsubscribe, $"<mailto:{settings.From}?subject=Unsubscribe%20{Uri.EscapeDataString(mail.Recipient)}>");
        message.Prepare(EncodingConstraint.SevenBit);
        return message;
    }
}
