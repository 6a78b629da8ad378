using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Flags;

namespace FleetTrend.Observations;

/// <summary>What the records of a whole fleet say at a moment: the one input of every number, and the rows behind it.</summary>
public sealed record FleetObservations
{
    /// <summary>The moment of knowledge (UTC).</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Observations by aircraft, in the order of the history.</summary>
    public required IReadOnlyList<AircraftObservations> Aircraft { get; init; }

    /// <summary>Problems of records of which no aircraft is known.</summary>
    public IReadOnlyList<DataProblem> OtherProblems { get; init; } = [];

    /// <summary>The newest closing of each flag: what came before it does not raise that flag again.</summary>
    public IReadOnlyList<FlagClosing> FlagClosings { get; init; } = [];

    /// <summary>Practice changes of all bases and type groups, ordered by day, then by key.</summary>
    public IReadOnlyList<ObservedPracticeChange> PracticeChanges { get; init; } = [];

    /// <summary>The newest stock count of each base and part number, by base and part number.</summary>
    public IReadOnlyList<ObservedStockCount> StockCounts { get; init; } = [];
}
