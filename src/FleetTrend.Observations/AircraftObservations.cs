using System.Text.Json.Serialization;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Looks;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations;

/// <summary>What the records of one aircraft say, in the form that statistics need; every part names its rows.</summary>
public sealed record AircraftObservations
{
    /// <summary>Registration mark.</summary>
    public required string Registration { get; init; }

    /// <summary>Base on the latest day known.</summary>
    public required string Base { get; init; }

    /// <summary>Type group on the latest day known.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The day it left the fleet, or null while it flies.</summary>
    public DateOnly? RetiredDate { get; init; }

    /// <summary>The day from which its records are complete.</summary>
    public DateOnly WatchStartDate { get; init; }

    /// <summary>The records that describe it.</summary>
    public IReadOnlyList<RecordKey> DescribedBy { get; init; } = [];

    /// <summary>
    /// The first day after the as-of day on which its records say something else, such as a retirement to come: until then the same
    /// records give the same observations. Null where there is none.
    /// </summary>
    public DateOnly? NextDate { get; init; }

    /// <summary>Time in service over the days.</summary>
    public HoursByDay Hours { get; init; } = new([]);

    /// <summary>Latest time in service known from readings and visits, and its day; null where there is neither.</summary>
    public HoursOnDate? Latest { get; init; }

    /// <summary>Time in service at the latest inspection, and its day; null where there is none.</summary>
    public HoursOnDate? LatestInspection { get; init; }

    /// <summary>Watched hours per location, cut where the aircraft changed base or type group.</summary>
    public required IReadOnlyList<LocationExposure> Exposures { get; init; }

    /// <summary>Events: each crack, leak and so on once, however often it was seen.</summary>
    public required IReadOnlyList<LocationEvent> Events { get; init; }

    /// <summary>Lives of parts.</summary>
    public required IReadOnlyList<ObservedLife> Lives { get; init; }

    /// <summary>
    /// Each location of its present layout, with when it was looked at since its records are complete and since it is in its present type group.
    /// </summary>
    public IReadOnlyList<LocationLooks> Looks { get; init; } = [];

    /// <summary>Days of that time on which an inspection examined something, ascending.</summary>
    public IReadOnlyList<Visit> Visits { get; init; } = [];

    /// <summary>What in the records does not add up; marked and listed, never repaired silently.</summary>
    public required IReadOnlyList<DataProblem> Problems { get; init; }

    /// <summary>Its mark, as others are compared with it.</summary>
    [JsonIgnore]
    public AircraftMark Mark => new(Registration, WatchStartDate, DescribedBy);

    /// <summary>Every type group in which something of it was observed, and its present one; each once.</summary>
    [JsonIgnore]
    public IEnumerable<string> TypeGroups => Exposures.Select(e => e.TypeGroup)
        .Concat(Events.Select(e => e.TypeGroup))
        .Concat(Lives.Select(l => l.TypeGroup))
        .Prepend(TypeGroup)
        .Distinct(StringComparer.Ordinal);
}
