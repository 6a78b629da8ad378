using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;

namespace FleetTrend.Trends.Changes;

/// <summary>Whether an aircraft or a base of a type group gets worse now, in one class of condition.</summary>
public sealed record Change
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The aircraft; null where the base as a whole is the subject.</summary>
    public string? Registration { get; init; }

    /// <summary>The base, of the aircraft its present one.</summary>
    public required string Base { get; init; }

    /// <summary>The condition; null where failures of a kind of part are counted.</summary>
    public Condition? Condition { get; init; }

    /// <summary>The kind of part; null where a condition is counted.</summary>
    public string? Kind { get; init; }

    /// <summary>The call that stands; null where none does.</summary>
    public FlagTier? Tier { get; init; }

    /// <summary>First day of the four weeks whose findings raised the call that stands; null without one.</summary>
    public DateOnly? CalledDate { get; init; }

    /// <summary>Natural logarithm of the odds by which "changed lately" fits better than "as ever".</summary>
    public required double LogScore { get; init; }

    /// <summary>First day of the four weeks in which it began, as probably earlier as later.</summary>
    public required DateOnly SinceDate { get; init; }

    /// <summary>It began before this day with a chance of at most 5 %.</summary>
    public required DateOnly SinceEarliestDate { get; init; }

    /// <summary>It began after this day with a chance of at most 5 %.</summary>
    public required DateOnly SinceLatestDate { get; init; }

    /// <summary>Path of the sub-assembly or location that most probably changed; empty for the whole aircraft or base.</summary>
    public required string Part { get; init; }

    /// <summary>Share of the odds that this part holds, in (0, 1].</summary>
    public required double PartShare { get; init; }

    /// <summary>Its locations with a finding since, most first.</summary>
    public required IReadOnlyList<ChangedLocation> Locations { get; init; }

    /// <summary>Times the rate before, the most probable of 2, 3, 5, 8 and 12.</summary>
    public required double Ratio { get; init; }

    /// <summary>Findings there before it began.</summary>
    public required int FoundBefore { get; init; }

    /// <summary>Findings that the others' rates or lives give for the same looks before it began.</summary>
    public required double ExpectedBefore { get; init; }

    /// <summary>Findings there since.</summary>
    public required int FoundSince { get; init; }

    /// <summary>Findings that the others' rates or lives give for the same looks since.</summary>
    public required double ExpectedSince { get; init; }

    /// <summary>Found over expected since.</summary>
    public required Figure RatioSince { get; init; }

    /// <summary>How many other aircraft, or bases, it is beside.</summary>
    public required int OthersCount { get; init; }

    /// <summary>New false calls per 50 aircraft-years that calls of this strength may make, all classes together; null without a call.</summary>
    public double? FalseCallsPer50AircraftYears { get; init; }

    /// <summary>Aircraft-years in which chance alone makes one call as strong as this, all classes together.</summary>
    public required double AircraftYearsPerFalseCall { get; init; }

    /// <summary>Whether that is the most that can be said, and it may be more.</summary>
    public required bool IsAircraftYearsCapped { get; init; }

    /// <summary>Variance over mean of the findings of a look: one where they come singly.</summary>
    public required double Dispersion { get; init; }

    /// <summary>Coefficient of variation of the levels of like aircraft or bases.</summary>
    public required double Variation { get; init; }
}
