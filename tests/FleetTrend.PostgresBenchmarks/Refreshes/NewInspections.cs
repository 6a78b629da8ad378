using FleetTrend.Contracts.V1;
using FleetTrend.PostgresBenchmarks.Fleets;
using FleetTrend.Synthetic;
using Date = Google.Type.Date;

namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>One inspection after another, each of another aircraft, in which all is well.</summary>
internal sealed class NewInspections(FilledFleet fleet) : IAsyncDisposable
{
    private const int Step = 7;
    private const double HoursFlown = 0.5;

    private readonly DirectIntake intake = new(fleet.Database);
    private int count;

    /// <summary>Adds the next one, of today.</summary>
    public async Task AddAsync()
    {
        var registration = fleet.Operator.Registrations[count * Step % fleet.Operator.Registrations.Count];
        var hours = await fleet.Database.ReadAsync<decimal>(
            """
            select coalesce(max(inspections.time_in_service_hours), 0) from inspections
            join records on records.id = inspections.record_id
            join aircraft on aircraft.id = records.aircraft_id
            where aircraft.registration = $1
            """,
            registration);
        var today = TimeProvider.System.GetUtcNow();
        var inspection = new Inspection
        {
            Registration = registration,
            InspectionDate = new Date { Year = today.Year, Month = today.Month, Day = today.Day },
            TimeInServiceHours = (double)hours + HoursFlown,
            Occasion = Occasion.Unscheduled,
        };
        inspection.Looks.AddRange(FilledFleets.Layout.Locations.Select(location => new LocationLook
        {
            Location = location.Path,
            State = LookState.Examined,
            Method = LookMethod.Visual,
        }));
        await intake.PushAsync(
        [
            new Record
            {
                Key = new RecordKey
                {
                    Source = SyntheticOperator.SourceName,
                    SourceRecordId = $"new-inspection-{count}",
                    Revision = 1,
                },
                Inspection = inspection,
            },
        ]);
        count++;
    }

    public ValueTask DisposeAsync() => intake.DisposeAsync();
}
