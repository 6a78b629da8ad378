namespace FleetTrend.Statistics.Changes;

/// <summary>Whether a unit changes, as known at the end of a period.</summary>
public sealed record ChangeScore
{
    /// <summary>Logarithm of the odds by which "changed lately" fits better than "as ever", averaged over times, ratios and parts.</summary>
    public required double Log { get; init; }

    /// <summary>Posterior chance of a change, with <see cref="ChangePrior.ChanceOfChange"/> beforehand.</summary>
    public required double Chance { get; init; }

    /// <summary>The most probable ratio of those looked for.</summary>
    public required double Ratio { get; init; }

    /// <summary>Share of the posterior that it holds.</summary>
    public required double RatioShare { get; init; }

    /// <summary>The most probable part.</summary>
    public required ChangeScope Scope { get; init; }

    /// <summary>Share of the posterior that it holds.</summary>
    public required double ScopeShare { get; init; }

    /// <summary>The first period of the change in the part: as probably earlier as later.</summary>
    public required int Since { get; init; }

    /// <summary>The first period before which it began with a chance of at most 5 %.</summary>
    public required int SinceEarliest { get; init; }

    /// <summary>The last period after which it began with a chance of at most 5 %.</summary>
    public required int SinceLatest { get; init; }

    /// <summary>Findings in the part before <see cref="Since"/>.</summary>
    public required int FoundBefore { get; init; }

    /// <summary>Findings expected in the part before <see cref="Since"/>, at the norm.</summary>
    public required double ExpectedBefore { get; init; }

    /// <summary>Findings in the part from <see cref="Since"/> on.</summary>
    public required int FoundSince { get; init; }

    /// <summary>Findings expected in the part from <see cref="Since"/> on, at the norm.</summary>
    public required double ExpectedSince { get; init; }
}
