using System.Text.Json.Serialization;

namespace FleetTrend.Trends.PartLives;

/// <summary>How long parts of a kind last in a type group, as a whole or at one base.</summary>
public sealed record PartLifeTrend
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The part kind.</summary>
    public required string Kind { get; init; }

    /// <summary>Title of the part kind, for people; null in trends stored before it was kept.</summary>
    public string? KindTitle { get; init; }

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

    /// <summary>Those of the <see cref="OtherExcluded"/> that had failed before observation began; null in trends of an earlier version.</summary>
    public int? FailedBeforeEntry { get; init; }

    /// <summary>Those of the <see cref="OtherExcluded"/> that were never examined; null in trends of an earlier version.</summary>
    public int? NeverExamined { get; init; }

    /// <summary>Those of the <see cref="OtherExcluded"/> that failed in no hours; null in trends of an earlier version.</summary>
    public int? FailedInNoHours { get; init; }

    /// <summary>Youngest age at which any of the lives was followed, hours; null where there is none, and in trends of an earlier version.</summary>
    public double? FollowedFromHours { get; init; }

    /// <summary>Oldest age at which any of the lives was followed, hours: nothing is known beyond. Null as above.</summary>
    public double? FollowedToHours { get; init; }

    /// <summary>Failures per 1,000 hours watched on parts, which has an upper limit even without a failure. Not constant with age.</summary>
    public required Figure FailureRate { get; init; }

    /// <summary>Non-parametric estimate, a step per interval that holds probability; empty where there is none.</summary>
    public required IReadOnlyList<LifeStep> Curve { get; init; }

    /// <summary>Name of the non-parametric method, or why there is no curve.</summary>
    public required string CurveMethod { get; init; }

    /// <summary>Fitted distributions, smallest AIC first; empty where there are too few failures.</summary>
    public required IReadOnlyList<LifeDistributionFit> Fits { get; init; }

    /// <summary>
    /// The law that is shown: one for all bases, the one that fits them better together by Akaike's criterion, and for all together the
    /// one that fits better. Null where there is no fit, or stored before it was told.
    /// </summary>
    public string? Law { get; init; }

    /// <summary>
    /// Chance that a new part fails within the look interval of its type group and kind, without a law's tail; null where stored
    /// before it was told.
    /// </summary>
    public Figure? EarlyFailures { get; init; }

    /// <summary>For all bases together: whether one is called different, so that no figure for all is given.</summary>
    public bool BasesDiffer { get; init; }

    /// <summary>The fit of the shown law, or the better one where that has none; null without a fit.</summary>
    [JsonIgnore]
    public LifeDistributionFit? Shown => Fits.FirstOrDefault(f => f.Distribution == Law) ?? (Fits.Count > 0 ? Fits[0] : null);

    /// <summary>Why there is no fit, or null where there is.</summary>
    public string? NotEnoughData { get; init; }

    /// <summary>For one base: comparison with the other bases of the type group; null elsewhere or where it cannot be made.</summary>
    public BaseContrast? Contrast { get; init; }
}
