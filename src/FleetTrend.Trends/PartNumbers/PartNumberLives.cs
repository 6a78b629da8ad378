namespace FleetTrend.Trends.PartNumbers;

/// <summary>How parts of one number last.</summary>
public sealed record PartNumberLives
{
    /// <summary>The part number, as the installation tells it.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Lives of known age that were watched.</summary>
    public required int Lives { get; init; }

    /// <summary>Failures among them.</summary>
    public required int Failures { get; init; }

    /// <summary>Aircraft that they were on.</summary>
    public required int Aircraft { get; init; }

    /// <summary>Lives of it that tell nothing: of unknown age, or never examined.</summary>
    public required int NotCounted { get; init; }

    /// <summary>Failures per 1,000 hours watched on the part.</summary>
    public required Figure FailureRate { get; init; }

    /// <summary>Chance that a new part fails within the look interval.</summary>
    public required Figure EarlyFailures { get; init; }
}
