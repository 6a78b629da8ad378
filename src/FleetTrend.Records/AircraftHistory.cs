using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Records;

/// <summary>
/// All records of one aircraft as known at a moment: of each source record the newest revision accepted by then,
/// and none that was retracted. Lists are ordered by date, then by key, so that equal knowledge gives equal histories.
/// </summary>
public sealed record AircraftHistory
{
    /// <summary>Registration mark.</summary>
    public required string Registration { get; init; }

    /// <summary>What each source says the aircraft is; at least one, and usually one.</summary>
    public required IReadOnlyList<Recorded<Airframe>> Airframes { get; init; }

    /// <summary>Meter readings.</summary>
    public IReadOnlyList<Recorded<MeterReading>> Readings { get; init; } = [];

    /// <summary>Meter changes.</summary>
    public IReadOnlyList<Recorded<MeterChange>> MeterChanges { get; init; } = [];

    /// <summary>Parts that went in.</summary>
    public IReadOnlyList<Recorded<Installation>> Installations { get; init; } = [];

    /// <summary>Parts that came out.</summary>
    public IReadOnlyList<Recorded<Removal>> Removals { get; init; } = [];

    /// <summary>Visits with what was looked at.</summary>
    public IReadOnlyList<Recorded<Inspection>> Inspections { get; init; } = [];

    /// <summary>Conditions seen.</summary>
    public IReadOnlyList<Recorded<Finding>> Findings { get; init; } = [];

    /// <summary>What was done.</summary>
    public IReadOnlyList<Recorded<CorrectiveAction>> Actions { get; init; } = [];

    /// <summary>Findings of two sources that people have decided are one event, as decided by that moment.</summary>
    public IReadOnlyList<FindingMerge> Merges { get; init; } = [];
}
