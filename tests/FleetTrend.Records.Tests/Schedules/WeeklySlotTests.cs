using FleetTrend.Records.Schedules;

namespace FleetTrend.Records.Tests.Schedules;

/// <summary>
/// When a weekly report is due. The changes of the clock are those of the IANA tz database: Europe/London goes from 01:00 to 02:00 on 29 March 2026 and
/// from 02:00 to 01:00 on 25 October 2026, both at 01:00 UTC; America/New_York from 02:00 to 03:00 on 8 March 2026 at 07:00 UTC and from 02:00 to 01:00
/// on 1 November 2026 at 06:00 UTC. All four days are Sundays.
/// </summary>
public class WeeklySlotTests
{
    [Theory]
    [InlineData("Europe/London", "Sunday 00:59", "2026-03-29", "2026-03-29T00:59:00Z")] // before the clock goes on
    [InlineData("Europe/London", "Sunday 01:00", "2026-03-29", "2026-03-29T01:00:00Z")] // skipped: when it goes on
    [InlineData("Europe/London", "Sunday 01:30", "2026-03-29", "2026-03-29T01:00:00Z")]
    [InlineData("Europe/London", "Sunday 02:00", "2026-03-29", "2026-03-29T01:00:00Z")]
    [InlineData("Europe/London", "Sunday 02:30", "2026-03-29", "2026-03-29T01:30:00Z")]
    [InlineData("Europe/London", "Sunday 00:59", "2026-10-25", "2026-10-24T23:59:00Z")]
    [InlineData("Europe/London", "Sunday 01:00", "2026-10-25", "2026-10-25T00:00:00Z")] // shown twice: the first
    [InlineData("Europe/London", "Sunday 01:59", "2026-10-25", "2026-10-25T00:59:00Z")]
    [InlineData("Europe/London", "Sunday 02:00", "2026-10-25", "2026-10-25T02:00:00Z")]
    [InlineData("America/New_York", "Sunday 01:59", "2026-03-08", "2026-03-08T06:59:00Z")]
    [InlineData("America/New_York", "Sunday 02:00", "2026-03-08", "2026-03-08T07:00:00Z")]
    [InlineData("America/New_York", "Sunday 02:45", "2026-03-08", "2026-03-08T07:00:00Z")]
    [InlineData("America/New_York", "Sunday 03:00", "2026-03-08", "2026-03-08T07:00:00Z")]
    [InlineData("America/New_York", "Sunday 01:00", "2026-11-01", "2026-11-01T05:00:00Z")]
    [InlineData("America/New_York", "Sunday 01:59", "2026-11-01", "2026-11-01T05:59:00Z")]
    [InlineData("America/New_York", "Sunday 02:00", "2026-11-01", "2026-11-01T07:00:00Z")]
    [InlineData("America/New_York", "Monday 06:00", "2026-10-26", "2026-10-26T10:00:00Z")] // four hours behind UTC
    [InlineData("America/New_York", "Monday 06:00", "2026-11-02", "2026-11-02T11:00:00Z")] // five
    [InlineData("UTC", "Monday 06:00", "2026-11-02", "2026-11-02T06:00:00Z")]
    public void A_day_has_exactly_one_due_moment_whatever_the_clock_does(string zone, string slot, string date, string expected)
    {
        var due = new DueMoment(DateOnly.Parse(date), DateTimeOffset.Parse(expected));
        Assert.Equal(due, Slot(slot).LatestAt(due.Time, Zone(zone)));
        Assert.Equal(due, Slot(slot).NextAfter(due.Time.AddSeconds(-1), Zone(zone)));
        Assert.NotEqual(due, Slot(slot).LatestAt(due.Time.AddSeconds(-1), Zone(zone)));
        Assert.Equal(due.Date.AddDays(7), Slot(slot).NextAfter(due.Time, Zone(zone)).Date);
    }

    [Theory] // Every minute of three days round each change is asked, as a worker's ticks would.
    [InlineData("Europe/London", "Sunday 01:30", "2026-03-28T00:00:00Z")]
    [InlineData("Europe/London", "Sunday 01:30", "2026-10-24T00:00:00Z")]
    [InlineData("America/New_York", "Sunday 02:30", "2026-03-07T00:00:00Z")]
    [InlineData("America/New_York", "Sunday 01:30", "2026-10-31T00:00:00Z")]
    public void Ticks_round_a_change_of_the_clock_meet_one_due_moment(string zone, string slot, string from)
    {
        var start = DateTimeOffset.Parse(from);
        var met = Enumerable.Range(0, 3 * 24 * 60).Select(i => Slot(slot).LatestAt(start.AddMinutes(i), Zone(zone))).Distinct().ToList();
        Assert.Equal(2, met.Count); // the one of the week before, and one of this week
        var next = Slot(slot).NextAfter(start, Zone(zone));
        Assert.Equal(met[1], next);
    }

    [Theory] // By hand: 23 November 2026 is a Monday, and New York is five hours behind UTC then: its 06:00 is 11:00 UTC.
    [InlineData("2026-11-23T10:59:59Z", "2026-11-16")] // a second before the hour: still the week before
    [InlineData("2026-11-23T11:00:00Z", "2026-11-23")]
    [InlineData("2026-11-25T12:00:00Z", "2026-11-23")] // a late worker makes the one that was due
    [InlineData("2026-11-30T04:59:00Z", "2026-11-23")] // Monday in UTC, still Sunday there
    public void The_latest_due_moment_is_by_the_clock_of_the_place(string now, string date) =>
        Assert.Equal(DateOnly.Parse(date), Slot("Monday 06:00").LatestAt(DateTimeOffset.Parse(now), Zone("America/New_York")).Date);

    private static WeeklySlot Slot(string text)
    {
        Assert.True(WeeklySlot.TryParse(text, out var slot));
        return slot;
    }

    private static TimeZoneInfo Zone(string id) => TimeZoneInfo.FindSystemTimeZoneById(id);
}
