namespace FleetTrend.Statistics.Changes;

/// <summary>What changes are looked for, and how likely each is beforehand.</summary>
public sealed record ChangePrior
{
    /// <summary>Times the rate before, each above one.</summary>
    public IReadOnlyList<double> Ratios { get; init; } = [2, 3, 5, 8, 12];

    /// <summary>Weights of the ratios; they add up to one.</summary>
    public IReadOnlyList<double> RatioWeights { get; init; } = [0.2, 0.2, 0.2, 0.2, 0.2];

    /// <summary>How many of the newest periods a change may have begun in; every period has the same weight.</summary>
    public int WindowPeriods { get; init; } = 20;

    /// <summary>Chance beforehand that a unit has changed within the window; only <see cref="ChangeScore.Chance"/> depends on it.</summary>
    public double ChanceOfChange { get; init; } = 0.02;

    /// <summary>A call ends when the score falls below this share of its limit.</summary>
    public double LowerLine { get; init; } = 0.25;
}
