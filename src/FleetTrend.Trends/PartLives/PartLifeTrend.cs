namespace FleetTrend.Trends.PartLives;

/// <summary>How long parts of a kind last in a type group, as a whole or at one base.</summary>
public sealed record PartLifeTrend
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The part kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The base, or null for all bases together.</summary>
    public string? Base { get; init; }

    /// <summary>Lives in the fit.</summary>
    public required int Lives { get; init; }

    /// <summary>Failures among them.</summary>
    public required int Failures { get; init; }

    /// <summary>Lives among them that came under observation with part of their age behind them.</summary>
    public required int LateEntries { get; init; }

    /// <summary>Lives left out because their age is not known.</summary>
    public required int AgeUnknown { get; init; }

    /// <summary>Lives left out because they had failed before observation began, were never examined, or failed in no hours.</summary>
    public required int OtherExcluded { get; init; }

    /// <summary>Failures per 1,000 hours watched on parts, which has an upper limit even without a failure. Not constant with age.</summary>
    public required Figure FailureRate { get; init; }

    /// <summary>Non-parametric estimate, a step per interval that holds probability; empty where there is none.</summary>
    public required IReadOnlyList<LifeStep> Curve { get; init; }

    /// <summary>Name of the non-parametric method, or why there is no curve.</summary>
    public required string CurveMethod { get; init; }

    /// <summary>Fitted distributions, smallest AIC first; empty where there are too few failures.</summary>
    public required IReadOnlyList<LifeDistributionFit> Fits { get; init; }

    /// <summary>Why there is no fit, or null where there is.</summary>
    public string? NotEnoughData { get; init; }

    /// <summary>For one base: comparison with the other bases of the type group; null elsewhere or where it cannot be made.</summary>
    public BaseContrast? Contrast { get; init; }
}
