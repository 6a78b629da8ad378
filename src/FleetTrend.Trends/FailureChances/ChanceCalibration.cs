namespace FleetTrend.Trends.FailureChances;

/// <summary>
/// Whether the chances of a type group came true: by the lives known 52 weeks ago, the chance of each look since, beside what it found.
/// </summary>
public sealed record ChanceCalibration
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The day whose knowledge the chances rest on.</summary>
    public required DateOnly FittedDate { get; init; }

    /// <summary>Looks since at parts that were good, of kinds that had failed often enough by then.</summary>
    public required int Looks { get; init; }

    /// <summary>Failures foreseen at these looks.</summary>
    public required double Expected { get; init; }

    /// <summary>Failures found at them.</summary>
    public required int Found { get; init; }

    /// <summary>Confidence of the limits of each group.</summary>
    public required double Confidence { get; init; }

    /// <summary>The looks in groups of equal size, the smallest chances first; empty where there are too few.</summary>
    public required IReadOnlyList<ChanceGroup> Groups { get; init; }

    /// <summary>The life distributions behind the chances of now.</summary>
    public required IReadOnlyList<LifeLaw> Laws { get; init; }
}
