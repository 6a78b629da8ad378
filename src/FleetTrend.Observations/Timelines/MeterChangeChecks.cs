using FleetTrend.Observations.DataProblems;
using FleetTrend.Records;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>Meter changes that do not fit what the meters show on either side of them.</summary>
/// <remarks>
/// Both ends of a change are held against their neighbour on the same meter: a reading, or the change before or after. Readings
/// among themselves are the matter of <see cref="AircraftHours"/>. A change told by two sources counts twice and shows here: the
/// meter that started with the one cannot have reached the end of the other on that day.
/// </remarks>
internal static class MeterChangeChecks
{
    private const long ToleranceTenths = 1;
    private const long TenthsPerDay = 240;

    public static void List(AircraftRecords records)
    {
        for (var i = 0; i < records.MeterChanges.Count; i++)
        {
            var change = records.MeterChanges[i];
            var before = i > 0 ? records.MeterChanges[i - 1] : null;
            var after = i + 1 < records.MeterChanges.Count ? records.MeterChanges[i + 1] : null;
            var reasons = new[] { End(records, change, before), Start(records, change, after) }.OfType<(string Text, RecordKey Other)>().ToList();
            if (reasons.Count == 0)
                continue;
            var content = change.Content;
            records.Problems.Add(new DataProblem(
                DataProblemKind.MeterChangeMismatch,
                records.Description.Registration,
                content.ChangeDate,
                $"The meter change of {content.ChangeDate:O} from {content.OldMeterHours} h to {content.NewMeterHours} h: {string.Join("; ", reasons.Select(r => r.Text))}.",
                [change.Key, .. reasons.Select(r => r.Other).Distinct()])
            {
                Subject = [change.Key],
            });
        }
    }

    /// <summary>What is wrong between the latest the old meter showed before the change and where it is said to have ended.</summary>
    private static (string, RecordKey)? End(AircraftRecords records, Recorded<MeterChange> change, Recorded<MeterChange>? before)
    {
        var c = change.Content;
        var reading = records.Readings.LastOrDefault(r =>
            r.Content.ReadingDate < c.ChangeDate && (before is null || r.Content.ReadingDate >= before.Content.ChangeDate));
        if (reading is not null)
            return Wrong(reading.Content.ReadingDate, reading.Content.MeterHours, c.ChangeDate, c.OldMeterHours, "the old meter") is { } text ? (text, reading.Key) : null;
        return before is not null && Wrong(before.Content.ChangeDate, before.Content.NewMeterHours, c.ChangeDate, c.OldMeterHours, "the old meter") is { } other
            ? (other, before.Key)
            : null;
    }

    /// <summary>What is wrong between where the new meter started and what it showed first; the next change says its own.</summary>
    private static (string, RecordKey)? Start(AircraftRecords records, Recorded<MeterChange> change, Recorded<MeterChange>? after)
    {
        var c = change.Content;
        var reading = records.Readings.FirstOrDefault(r =>
            r.Content.ReadingDate >= c.ChangeDate && (after is null || r.Content.ReadingDate < after.Content.ChangeDate));
        return reading is not null
            && Wrong(c.ChangeDate, c.NewMeterHours, reading.Content.ReadingDate, reading.Content.MeterHours, "the new meter") is { } text
            ? (text, reading.Key)
            : null;
    }

    private static string? Wrong(DateOnly fromDate, Hours from, DateOnly toDate, Hours to, string meter)
    {
        var gained = to.Tenths - from.Tenths;
        var days = toDate.DayNumber - fromDate.DayNumber + 1L; // both days can be flown
        var values = $"{meter} shows {from} h on {fromDate:O} and {to} h on {toDate:O}";
        return gained < -ToleranceTenths ? $"{values}, which is backwards"
            : gained > TenthsPerDay * days ? $"{values}, which is more than 24 h a day"
            : null;
    }
}
