using FleetTrend.Api.Schedules;
using FleetTrend.Records.Schedules;
using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;
using FleetTrend.Store.Schedules;
using Wire = FleetTrend.Contracts.V1.DeliveryState;

namespace FleetTrend.Api.Pages.Schedules;

/// <summary>Schedules in words.</summary>
internal static class ScheduleWords
{
    private static readonly TimeSpan Late = TimeSpan.FromMinutes(5);

    /// <summary>What its reports are about: <c>base North</c>.</summary>
    public static string About(ReportScope scope) => scope switch
    {
        { Base: { } home } => $"base {home}",
        { TypeGroup: { } typeGroup } => $"type group {typeGroup}",
        _ => "the whole fleet",
    };

    /// <summary>When it comes: <c>Monday 06:00, America/Chicago</c>.</summary>
    public static string When(ReportSchedule schedule) =>
        $"{schedule.Slot}, {schedule.TimeZone}{(schedule.FollowsSettings ? " (as the server is set)" : "")}";

    /// <summary>When it is due next, by the clock of its place.</summary>
    public static string NextDue(ReportSchedule schedule) => schedule switch
    {
        { IsPaused: true } => "paused",
        { NextDueTime: { } due } => Moment(due, schedule.TimeZone),
        _ => "not worked out yet: a worker does so within seconds",
    };

    /// <summary>The last time it was due, and whether the report was late.</summary>
    public static string LastDue(ReportSchedule schedule)
    {
        if (schedule is not { LastDueTime: { } due, LastMadeTime: { } made })
            return "never yet";
        var said = Moment(due, schedule.TimeZone);
        return made - due >= Late ? $"{said}; made {AgeWords.Describe(made - due)} late, since no worker ran" : said;
    }

    /// <summary>What became of the last report on its way to a recipient.</summary>
    public static string State(DeliveryState delivery) => (ScheduleMessages.StateOf(delivery), delivery.Mail) switch
    {
        (Wire.Sent, { } mail) => $"sent on {NumberWords.Moment(mail.EndTime!.Value)}",
        (Wire.GivenUp, { } mail) => $"given up on {NumberWords.Moment(mail.EndTime!.Value)} after {Tries(mail.AttemptCount)}{Said(mail.LastError)}",
        (Wire.Owed, { AttemptCount: 0 } mail) => $"owed since {NumberWords.Moment(mail.OwedTime)}, not tried yet",
        (Wire.Owed, { } mail) => $"owed since {NumberWords.Moment(mail.OwedTime)}, {Tries(mail.AttemptCount)} so far{Said(mail.LastError)}",
        (Wire.NoLongerKept, _) => "was owed; the mail is older than mails are kept",
        _ => "gets the next one",
    };

    /// <summary>The same of all recipients, without their addresses: <c>3 sent, 1 owed</c>.</summary>
    public static string States(IReadOnlyList<DeliveryState> deliveries) => deliveries.Count == 0 ? "nobody" : string.Join(", ", deliveries
        .GroupBy(ScheduleMessages.StateOf).OrderBy(g => g.Key)
        .Select(g => $"{NumberWords.Count(g.Count())} {Short(g.Key)}"));

    private static string Short(Wire state) => state switch
    {
        Wire.Sent => "sent",
        Wire.GivenUp => "given up",
        Wire.Owed => "owed",
        Wire.NoLongerKept => "no longer kept",
        _ => "from the next one on",
    };

    private static string Tries(int count) => NumberWords.Count(count, "attempt", "attempts");

    private static string Said(string? error) => error is null ? "" : $"; the mail server said {ForeignText.Quoted(error)}";

    /// <summary>A moment by the clock of a place: <c>Mon 30 Nov 2026, 06:00</c>; in UTC where the zone is not known here any more.</summary>
    private static string Moment(DateTimeOffset moment, string timeZone) => TimeZoneInfo.TryFindSystemTimeZoneById(timeZone, out var zone)
        ? NumberWords.MomentThere(TimeZoneInfo.ConvertTime(moment, zone))
        : NumberWords.Moment(moment);
}
