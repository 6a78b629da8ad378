using System.Globalization;
using FleetTrend.Api.Trends;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Records.Schedules;
using FleetTrend.Reports.Weekly;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Results;
using FleetTrend.Store.Schedules;
using Grpc.Core;
using MailState = FleetTrend.Store.Outbox.MailState;

namespace FleetTrend.Api.Reports;

/// <summary>The archive of reports, reports outside the schedule, and who gets which.</summary>
internal sealed class ReportGrpcService(
    ReportStore reports, ReportRequests requests, ScheduleStore schedules, OutboxStore outbox, ReportReproduction reproduction,
    FleetDirectory fleet, NameFilters filters, FreshnessReader freshness, HostSettings settings, TimeProvider clock)
    : ReportService.ReportServiceBase
{
    private const int MostPerPage = 500;

    /// <inheritdoc/>
    public override async Task<ListReportsResponse> ListReports(ListReportsRequest request, ServerCallContext context)
    {
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        // "*" is the whole fleet, not the reports of type groups.
        var scope = request.Base.Length == 0 && request.TypeGroup.Length == 0 ? null : ReportScope.Of(request.Base, request.TypeGroup);
        var page = await Paging.ReadAsync(request.PageToken, () => reports.ListAsync(
            scope, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListReportsResponse
        {
            Reports = { page.Items.Select(r => r.ToWire()) },
            NextPageToken = page.NextPageToken ?? "",
            Freshness = (await freshness.ReadAsync(context.CancellationToken)).ToWire(),
        };
    }

    /// <inheritdoc/>
    public override async Task<GetReportResponse> GetReport(GetReportRequest request, ServerCallContext context) =>
        new() { Report = (await FindAsync(request.ReportId, context.CancellationToken)).ToWire() };

    /// <inheritdoc/>
    public override async Task<RequestReportResponse> RequestReport(RequestReportRequest request, ServerCallContext context)
    {
        Refuse(ReportRules.Request(request));
        var period = ReportPeriod.EndingOn(clock.GetUtcNow(), settings.Schedule.TimeZone);
        var asked = (await requests.AddAsync(
            request.RequestId, period.Start, period.End, write: !request.ValidateOnly, context.CancellationToken)).ToWire();
        if (request.ValidateOnly)
            asked.RequestTime = null;
        return new RequestReportResponse { RequestTime = asked.RequestTime, Request = asked };
    }

    /// <inheritdoc/>
    public override async Task<ListReportRequestsResponse> ListReportRequests(ListReportRequestsRequest request, ServerCallContext context)
    {
        var size = Paging.Size(request.PageSize, MostPerPage);
        if (request.RequestId.Length > 0)
        {
            var one = await requests.FindAsync(request.RequestId, context.CancellationToken) ?? throw new Refusal(
                "request_id", request.RequestId, Reasons.ReportRequestNotFound, "must be the identifier of a request for reports").ToException();
            return new ListReportRequestsResponse { Requests = { one.ToWire() } };
        }

        var page = await Paging.ReadAsync(request.PageToken, () => requests.ListAsync(size, request.PageToken, context.CancellationToken));
        return new ListReportRequestsResponse { Requests = { page.Items.Select(r => r.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<ReproduceReportResponse> ReproduceReport(ReproduceReportRequest request, ServerCallContext context)
    {
        var report = await FindAsync(request.ReportId, context.CancellationToken);
        var difference = await reproduction.FirstDifferenceAsync(report, context.CancellationToken);
        return new ReproduceReportResponse { Same = difference is null, Difference = difference ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<SetRecipientsResponse> SetRecipients(SetRecipientsRequest request, ServerCallContext context)
    {
        Refuse(ReportRules.Recipients(request));
        await RefuseUnknownBaseAsync(request, context.CancellationToken);
        var scope = ReportScope.Of(request.Base);
        var shipped = new ShippedSlot(settings.Schedule.WeeklyReport, settings.Schedule.TimeZone).ScheduleOf(scope, clock.GetUtcNow());
        var stored = await schedules.SetRecipientsAsync(scope, request.Addresses, shipped, write: !request.ValidateOnly, context.CancellationToken);
        return new SetRecipientsResponse { Recipients = new Recipients { Base = request.Base, Addresses = { stored } } };
    }

    /// <inheritdoc/>
    public override async Task<ListRecipientsResponse> ListRecipients(ListRecipientsRequest request, ServerCallContext context) => new()
    {
        Recipients =
        {
            (await schedules.ListAsync(context.CancellationToken)).Where(s => s.Scope.TypeGroup is null && s.Recipients.Count > 0)
                .GroupBy(s => s.Scope.Base ?? ReportScope.AllBases, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new Recipients
                {
                    Base = g.Key,
                    Addresses = { g.SelectMany(s => s.Recipients).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal) },
                }),
        },
    };

    /// <inheritdoc/>
    public override async Task<ListMailsResponse> ListMails(ListMailsRequest request, ServerCallContext context)
    {
        Refuse(ReportRules.Mails(request));
        MailState? state = request.State == Contracts.V1.MailState.Unspecified ? null : (MailState)request.State;
        var page = await Paging.ReadAsync(request.PageToken, () => outbox.ListAsync(
            state, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListMailsResponse { Mails = { page.Items.Select(m => m.ToWire()) }, NextPageToken = page.NextPageToken ?? "" };
    }

    /// <inheritdoc/>
    public override async Task<RetryMailResponse> RetryMail(RetryMailRequest request, ServerCallContext context)
    {
        var mail = long.TryParse(request.MailId, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            ? await outbox.RetryAsync(id, write: !request.ValidateOnly, context.CancellationToken)
            : null;
        return new RetryMailResponse
        {
            Mail = (mail ?? throw new Refusal("mail_id", request.MailId, Reasons.MailNotFound, "must be the identifier of a mail").ToException()).ToWire(),
        };
    }

    /// <summary>Nobody would get a report of a base that no aircraft has. One that has none any more may still be cleared.</summary>
    private async Task RefuseUnknownBaseAsync(SetRecipientsRequest request, CancellationToken ct)
    {
        if (request.Base == ReportScope.AllBases)
            return;
        var bases = await fleet.ReadBasesAsync([], ct);
        if (bases.Contains(request.Base, StringComparer.Ordinal)
            || (request.Addresses.Count == 0 && (await schedules.ListAsync(ct)).Any(s => s.Scope.Base == request.Base && s.Recipients.Count > 0)))
        {
            return;
        }

        throw new Refusal("base", request.Base, Reasons.BaseNotFound, "must be the base of an aircraft, or * for the whole fleet")
        {
            Nearest = NearestName.Find(request.Base, bases),
        }.ToException();
    }

    private async Task<StoredReport> FindAsync(string reportId, CancellationToken ct)
    {
        var report = long.TryParse(reportId, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            ? await reports.GetAsync(id, ct)
            : null;
        return report ?? throw new Refusal("report_id", reportId, Reasons.ReportNotFound, "must be the identifier of a report").ToException();
    }

    private static void Refuse(IReadOnlyList<Refusal> refusals)
    {
        if (refusals.Count > 0)
            throw refusals.ToException();
    }
}
