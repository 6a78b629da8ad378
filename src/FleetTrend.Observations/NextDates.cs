using FleetTrend.Records;

namespace FleetTrend.Observations;

/// <summary>Days on which the same records begin to say something else.</summary>
internal static class NextDates
{
    /// <summary>The first day of anything in a history after a day; null where there is none.</summary>
    public static DateOnly? After(DateOnly asOf, AircraftHistory history)
    {
        var next = history.Airframes.SelectMany(a => a.Content.Assignments).Select(a => (DateOnly?)a.FromDate)
            .Concat(history.Airframes.Select(a => a.Content.RetiredDate))
            .Concat(history.Readings.Select(r => (DateOnly?)r.Content.ReadingDate))
            .Concat(history.MeterChanges.Select(r => (DateOnly?)r.Content.ChangeDate))
            .Concat(history.Installations.Select(r => (DateOnly?)r.Content.InstallationDate))
            .Concat(history.Removals.Select(r => (DateOnly?)r.Content.RemovalDate))
            .Concat(history.Inspections.Select(r => (DateOnly?)r.Content.InspectionDate))
            .Concat(history.Findings.Select(r => (DateOnly?)r.Content.FoundDate))
            .Concat(history.Actions.Select(r => (DateOnly?)r.Content.ActionDate));
        return next.Where(d => d > asOf).Min();
    }
}
