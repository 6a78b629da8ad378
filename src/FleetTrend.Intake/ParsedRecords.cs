using FleetTrend.Store.Histories;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake;

/// <summary>Records held against the rules and not stored yet. Opaque: it goes from one half of a push to the other.</summary>
public sealed class ParsedRecords
{
    internal ParsedRecords(
        IReadOnlyList<Wire.Record> records,
        IReadOnlyList<(int Index, NewRecord Record)> good,
        IReadOnlyDictionary<int, IReadOnlyList<Refusal>> waiting,
        Wire.RecordOutcome[] outcomes)
    {
        Records = records;
        Good = good;
        Waiting = waiting;
        Outcomes = outcomes;
    }

    /// <summary>As they were sent.</summary>
    internal IReadOnlyList<Wire.Record> Records { get; }

    /// <summary>Those that are to be stored or held, with their place among the sent ones.</summary>
    internal IReadOnlyList<(int Index, NewRecord Record)> Good { get; }

    /// <summary>By place: what those wait for that are to be held.</summary>
    internal IReadOnlyDictionary<int, IReadOnlyList<Refusal>> Waiting { get; }

    /// <summary>By place: outcomes of the others, and room for the rest.</summary>
    internal Wire.RecordOutcome[] Outcomes { get; }
}
