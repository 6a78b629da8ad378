using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Timelines;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Texts;

namespace FleetTrend.Observations.Lives;

/// <summary>Lives of the parts at one location (rules 2 to 5).</summary>
/// <remarks>
/// For a life a look is good where none of its kind's failing conditions was found, even where another defect was.
/// A failure ends the life for the fit, even where the part is repaired and kept; only a renewal starts another.
/// A part whose location the aircraft's present layout no longer has counts as taken out at its last good look.
/// </remarks>
internal sealed class LocationLives
{
    private readonly LocationTimeline timeline;
    private readonly AircraftRecords records;
    private readonly AircraftHours hours;
    private readonly List<ObservedLife> lives = [];

    /// <summary>The part now in place, or null between a removal and what follows it.</summary>
    private ObservedLifeBuilder? current = new();

    /// <summary>The part number last told here.</summary>
    private string? partNumber;

    private LocationLives(LocationTimeline timeline, AircraftRecords records, AircraftHours hours)
    {
        this.timeline = timeline;
        this.records = records;
        this.hours = hours;
    }

    public static IReadOnlyList<ObservedLife> Build(LocationTimeline timeline, AircraftRecords records, AircraftHours hours)
    {
        if (!timeline.Kind.HasLife)
            return [];
        var passing = new LocationLives(timeline, records, hours);
        foreach (var day in timeline.Days)
            passing.Pass(day);
        passing.EndOfRecords();
        return passing.lives;
    }

    private bool IsWatched(LocationDay day) => day.Date >= records.Description.WatchStartDate;

    private void Pass(LocationDay day)
    {
        if (day.Look is { } look)
        {
            current ??= new ObservedLifeBuilder();
            See(day, look, current);
        }

        foreach (var removal in day.Removals)
            Remove(day, removal);
        if (day.Renewal is { } renewal)
            Renew(day, renewal);
    }

    private void See(LocationDay day, Look look, ObservedLifeBuilder life)
    {
        if (life.HasFailed)
            return;
        var failing = look.IsGood ? null : look.Defects.FirstOrDefault(d => timeline.Kind.Failures.Contains(d.Content.Condition));
        if (failing is not null)
            life.Fail(day, IsWatched(day), failing.Content.Condition, look.Keys);
        else if (IsWatched(day))
            life.SeeGood(day, look.Keys);
    }

    private void Remove(LocationDay day, Recorded<Removal> removal)
    {
        if (current is not { } life)
        {
            if (removal == day.Removals[0])
            {
                records.List(
                    DataProblemKind.InstallationMismatch,
                    day.Date,
                    $"A removal at {timeline.Location} on {day.Date:O}, but by the records nothing was in place there.",
                    [removal.Key]);
            }

            return;
        }

        if (removal.Content.SerialNumber is { } serial && life.SerialNumber is { } installed && serial != installed)
        {
            records.List(
                DataProblemKind.InstallationMismatch,
                day.Date,
                $"Serial number {ForeignText.Identifier(serial)} is recorded as removed at {timeline.Location} on {day.Date:O}, "
                    + $"but {ForeignText.Identifier(installed)} was installed there.",
                [removal.Key]);
        }

        if (!life.HasFailed && removal.Content.Reason == RemovalReason.Failed)
            life.Fail(day, IsWatched(day), condition: null, [removal.Key]);
        else if (!life.HasFailed && removal.Content.ExaminedGood && IsWatched(day))
            life.SeeGood(day, [removal.Key]);
        var ending = removal.Content.Reason == RemovalReason.AircraftRetired ? LifeEnding.AircraftRetired : LifeEnding.RemovedGood;
        End(day, life, ending, [removal.Key]);
        current = null;
    }

    private void Renew(LocationDay day, Renewal renewal)
    {
        if (current is { } life)
        {
            var unrecorded = renewal.IsInstallation && life.HasStart && !life.HasFailed
                && !day.Actions.Any(a => a.Content.Kind == ActionKind.Replaced);
            if (unrecorded)
            {
                records.InstallationsOverParts.Add(new InstallationOverPart(day.Date, timeline.Location, renewal.Keys));
            }

            if (life.HasStart || life.IsWatched || !renewal.IsInstallation)
                End(day, life, LifeEnding.RemovedGood, renewal.Keys);
        }

        partNumber = renewal.PartNumber ?? partNumber;
        current = new ObservedLifeBuilder(day, renewal, partNumber, IsWatched(day));
    }

    private void End(LocationDay day, ObservedLifeBuilder life, LifeEnding ending, IReadOnlyList<RecordKey> keys)
    {
        if (!IsWatched(day))
            return;
        life.TakeOut(day, keys);
        lives.Add(life.Build(timeline, records.Description, life.HasFailed ? LifeEnding.Failed : ending, latestHours: null));
    }

    private void EndOfRecords()
    {
        if (current is not { } life || !(life.HasStart || life.IsWatched))
            return;
        var aircraft = records.Description;
        var ending = life.HasFailed ? LifeEnding.Failed
            : aircraft.RetiredDate is not null ? LifeEnding.AircraftRetired
            : aircraft.Kind(timeline.Location, records.AsOf) is null ? LifeEnding.RemovedGood
            : LifeEnding.InService;
        lives.Add(life.Build(timeline, aircraft, ending, hours.ByDay.Latest?.Hours));
    }
}
