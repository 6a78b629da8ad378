using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Records.Schedules;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Schedules;
using ReportSchedule = FleetTrend.Store.Schedules.ReportSchedule;

namespace FleetTrend.Api.Schedules;

/// <summary>Sets, removes and sends schedules of reports, by a call or by a form: the same rules and the same refusals.</summary>
internal sealed class ScheduleAnswers(
    ScheduleStore schedules, FleetDirectory fleet, FleetNames names, TimeProvider clock, ILogger<ScheduleAnswers> log)
{
    /// <summary>The call that lists schedules with the addresses of their recipients.</summary>
    public const string Listing = "/fleettrend.v1.ReportScheduleService/ListReportSchedules";

    /// <summary>The call that adds and changes them.</summary>
    public const string Setting = "/fleettrend.v1.ReportScheduleService/SetReportSchedule";

    /// <summary>The call that removes them.</summary>
    public const string Removing = "/fleettrend.v1.ReportScheduleService/DeleteReportSchedule";

    /// <summary>The call that sends now.</summary>
    public const string Sending = "/fleettrend.v1.ReportScheduleService/SendReportNow";

    /// <summary>Adds a schedule, or changes the one of that name.</summary>
    public async Task<Answer<ReportSchedule>> SetAsync(SetReportScheduleRequest request, Caller caller, CancellationToken ct)
    {
        var refusals = ScheduleRules.Check(request.Schedule, out var zone, out var slot);
        if (refusals.Count > 0)
            return Answer<ReportSchedule>.Refuse(refusals);
        var asked = request.Schedule;
        var before = await schedules.FindAsync(asked.Name, ct);
        if (await UnknownScopeAsync(asked, before, ct) is { } unknown)
            return unknown;
        var isSameTime = before is not null && before.Slot == slot && before.TimeZone == asked.TimeZone;
        var stored = await schedules.SetAsync(
            new ReportSchedule
            {
                Name = asked.Name,
                Scope = ReportScope.Of(asked.Base, asked.TypeGroup),
                Slot = slot,
                TimeZone = asked.TimeZone,
                FollowsSettings = isSameTime && before!.FollowsSettings,
                IsPaused = asked.Paused,
                NextDueTime = asked.Paused ? null
                    : isSameTime && !before!.IsPaused ? before.NextDueTime
                    : slot.NextAfter(clock.GetUtcNow(), zone).Time,
                Recipients = asked.Recipients,
            },
            write: !request.ValidateOnly, ct);
        if (!request.ValidateOnly)
            ApiLog.ScheduleSet(log, stored.Name, stored.IsPaused, stored.Recipients.Count, caller.LogName);
        return stored;
    }

    /// <summary>Removes a schedule.</summary>
    public async Task<Answer<DeleteReportScheduleResponse>> RemoveAsync(DeleteReportScheduleRequest request, Caller caller, CancellationToken ct)
    {
        var refusals = ScheduleRules.CheckName(request.Name);
        if (refusals.Count > 0)
            return Answer<DeleteReportScheduleResponse>.Refuse(refusals);
        if (!await schedules.RemoveAsync(request.Name, write: !request.ValidateOnly, ct))
            return await UnknownAsync(request.Name, ct);
        if (!request.ValidateOnly)
            ApiLog.ScheduleRemoved(log, request.Name, caller.LogName);
        return new DeleteReportScheduleResponse();
    }

    /// <summary>Asks a worker to send the last report now.</summary>
    public async Task<Answer<ReportSchedule>> SendAsync(SendReportNowRequest request, Caller caller, CancellationToken ct)
    {
        var refusals = ScheduleRules.CheckName(request.Name);
        if (refusals.Count > 0)
            return Answer<ReportSchedule>.Refuse(refusals);
        if (await schedules.AskToSendAsync(request.Name, write: !request.ValidateOnly, ct) is not { } asked)
            return await UnknownAsync(request.Name, ct);
        if (!request.ValidateOnly)
            ApiLog.SendAsked(log, asked.Name, caller.LogName);
        return asked;
    }

    /// <summary>The refusal of a name that no schedule has.</summary>
    public async Task<Refusal> UnknownAsync(string name, CancellationToken ct) =>
        new("name", name, Reasons.ReportScheduleNotFound, "must be the name of a schedule")
        {
            Nearest = NearestName.Find(name, (await schedules.ListAsync(ct)).Select(s => s.Name)),
        };

    /// <summary>A schedule of what nobody flies would send nothing. One whose base has lost its last aircraft may still be changed.</summary>
    private async Task<Refusal?> UnknownScopeAsync(Contracts.V1.ReportSchedule asked, ReportSchedule? before, CancellationToken ct)
    {
        if (asked.Base == ReportScope.AllBases || (before is not null && before.Scope == ReportScope.Of(asked.Base, asked.TypeGroup)))
            return null;
        var isBase = asked.Base.Length > 0;
        var known = isBase ? await fleet.ReadBasesAsync([], ct) : await names.ReadAsync(NameKind.TypeGroup, ct);
        var told = isBase ? asked.Base : asked.TypeGroup;
        if (known.Contains(told, StringComparer.Ordinal))
            return null;
        return isBase
            ? new Refusal("schedule.base", told, Reasons.BaseNotFound, "must be the base of an aircraft, or * for the whole fleet")
            { Nearest = NearestName.Find(told, known) }
            : new Refusal("schedule.type_group", told, Reasons.TypeGroupNotFound, "must be a registered type group")
            { Nearest = NearestName.Find(told, known) };
    }
}
