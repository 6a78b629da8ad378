using FleetTrend.Store.Histories;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake;

/// <summary>Records held against the rules and not stored yet. Opaque: it goes from one half of a push to the other.</summary>
public sealed class ParsedRecords
{
    internal ParsedRecords(
        IReadOnlyList<Wire.Record> records, IReadOnlyList<(int Place, NewRecord Record)> good, Wire.RecordOutcome[] outcomes)
    {
        Records = records;
        Good = good;
        Outcomes = outcomes;
    }

    /// <summary>As they were sent.</summary>
    internal IReadOnlyList<Wire.Record> Records { get; }

    /// <summary>Those that break no rule, with their place among the sent ones.</summary>
    internal IReadOnlyList<(int Place, NewRecord Record)> Good { get; }

    /// <summary>By place: outcomes of the others, and room for the rest.</summary>
    internal Wire.RecordOutcome[] Outcomes { get; }
}
