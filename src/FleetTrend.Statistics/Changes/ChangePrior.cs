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

    /// <summary>
    /// Largest shape of the levels that the score takes a unit to come from: the smaller, the more a unit is measured by its own past and the less
    /// by the others. Held down because a unit that always ran at twice the norm would else be called for what is no change. The ordinary units of the
    /// simulated limits keep the spread that was estimated, so that the stated rates hold whatever this is.
    /// </summary>
    public double LargestLevelShape { get; init; } = 0.5;

    /// <summary>A call ends when the score falls below this share of its limit.</summary>
    public double LowerLine { get; init; } = 0.25;
}
