using System.Globalization;
using FleetTrend.Api.Reports;
using FleetTrend.Records.Schedules;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Schedules;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Schedules;

/// <summary>Schedules of reports as the contract writes them.</summary>
internal static class ScheduleMessages
{
    private const int Sunday = 7;

    public static Wire.ReportScheduleState ToWire(this ReportSchedule schedule, IReadOnlyList<DeliveryState> deliveries) => new()
    {
        Schedule = schedule.ToWire(),
        FollowsSettings = schedule.FollowsSettings,
        NextDueTime = schedule.NextDueTime?.ToWire(),
        LastDueTime = schedule.LastDueTime?.ToWire(),
        LastMadeTime = schedule.LastMadeTime?.ToWire(),
        LastReportId = schedule.LastReportId?.ToString(CultureInfo.InvariantCulture) ?? "",
        SendPending = schedule.SendAskedTime is not null,
        Failure = schedule.Failure ?? "",
        Deliveries = { deliveries.Select(d => new Wire.ReportDelivery { Recipient = d.Address, State = StateOf(d), Mail = d.Mail?.ToWire() }) },
    };

    public static Wire.ReportSchedule ToWire(this ReportSchedule schedule) => new()
    {
        Name = schedule.Name,
        Base = schedule.Scope.Base ?? (schedule.Scope.IsWholeFleet ? ReportScope.AllBases : ""),
        TypeGroup = schedule.Scope.TypeGroup ?? "",
        Weekday = (Wire.Weekday)(schedule.Slot.Day == DayOfWeek.Sunday ? Sunday : (int)schedule.Slot.Day),
        Time = schedule.Slot.Time.ToString("HH:mm", CultureInfo.InvariantCulture),
        TimeZone = schedule.TimeZone,
        Paused = schedule.IsPaused,
        Recipients = { schedule.Recipients },
    };

    /// <summary>How far a report is on its way.</summary>
    public static Wire.DeliveryState StateOf(DeliveryState delivery)
    {
        ArgumentNullException.ThrowIfNull(delivery);
        return delivery switch
        {
            { Mail.State: MailState.Sent } => Wire.DeliveryState.Sent,
            { Mail.State: MailState.GivenUp } => Wire.DeliveryState.GivenUp,
            { Mail: not null } => Wire.DeliveryState.Owed,
            { WasOwed: true } => Wire.DeliveryState.NoLongerKept,
            _ => Wire.DeliveryState.NotOwed,
        };
    }
}
