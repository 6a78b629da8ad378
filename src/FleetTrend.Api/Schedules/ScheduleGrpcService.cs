using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Api.Reports;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Schedules;
using Grpc.Core;
using ReportSchedule = FleetTrend.Store.Schedules.ReportSchedule;

namespace FleetTrend.Api.Schedules;

/// <summary>When reports are made, of what, and who gets them.</summary>
internal sealed class ScheduleGrpcService(ScheduleStore schedules, ScheduleAnswers answers, ReportPreviews previews)
    : ReportScheduleService.ReportScheduleServiceBase
{
    /// <inheritdoc/>
    public override async Task<ListReportSchedulesResponse> ListReportSchedules(ListReportSchedulesRequest request, ServerCallContext context)
    {
        var response = new ListReportSchedulesResponse();
        foreach (var schedule in await schedules.ListAsync(context.CancellationToken))
            response.Schedules.Add(await StateAsync(schedule, context));
        return response;
    }

    /// <inheritdoc/>
    public override async Task<SetReportScheduleResponse> SetReportSchedule(SetReportScheduleRequest request, ServerCallContext context)
    {
        var stored = (await answers.SetAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow();
        return new SetReportScheduleResponse { Schedule = await StateAsync(stored, context) };
    }

    /// <inheritdoc/>
    public override async Task<DeleteReportScheduleResponse> DeleteReportSchedule(DeleteReportScheduleRequest request, ServerCallContext context) =>
        (await answers.RemoveAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow();

    /// <inheritdoc/>
    public override async Task<SendReportNowResponse> SendReportNow(SendReportNowRequest request, ServerCallContext context)
    {
        var asked = (await answers.SendAsync(request, Caller.Read(context), context.CancellationToken)).OrThrow();
        return new SendReportNowResponse { Schedule = await StateAsync(asked, context) };
    }

    /// <inheritdoc/>
    public override async Task<GetReportPreviewResponse> GetReportPreview(GetReportPreviewRequest request, ServerCallContext context)
    {
        var ct = context.CancellationToken;
        var refusals = ScheduleRules.CheckName(request.Name);
        if (refusals.Count > 0)
            throw refusals.ToException();
        var schedule = await schedules.FindAsync(request.Name, ct) ?? throw (await answers.UnknownAsync(request.Name, ct)).ToException();
        var preview = await previews.ReadAsync(schedule, ct)
            ?? throw new Refusal("", "", Reasons.NoTrendsYet, "must come after the first refresh").ToException();
        var report = preview.Report;
        return new GetReportPreviewResponse
        {
            PeriodStartDate = report.PeriodStart.ToWire(),
            PeriodEndDate = report.PeriodEnd.ToWire(),
            ReportId = report.ReportId == 0 ? "" : report.ReportId.ToString(CultureInfo.InvariantCulture),
            Recipients = { preview.Recipients },
            Subject = report.Subject,
            Text = report.Text,
            Html = ReportMessages.HtmlWithPlots(report),
        };
    }

    private async Task<ReportScheduleState> StateAsync(ReportSchedule schedule, ServerCallContext context) =>
        schedule.ToWire(await schedules.DeliveriesAsync(schedule, context.CancellationToken));
}
