using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.BackTests;

/// <summary>A call as it would have come, by the dates of the records.</summary>
public sealed record BackTestCall
{
    /// <summary>Name of the <see cref="BackTestMethod"/> that makes it.</summary>
    public required string Method { get; init; }

    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The aircraft; null where the base as a whole is called.</summary>
    public string? Registration { get; init; }

    /// <summary>The base, of an aircraft its present one.</summary>
    public required string Base { get; init; }

    /// <summary>The condition; null where failures of a kind of part are counted.</summary>
    public Condition? Condition { get; init; }

    /// <summary>The kind of part; null where a condition is counted.</summary>
    public string? Kind { get; init; }

    /// <summary>The day on which it would have come: the last of a week, of an alert level the last of a month.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The day on which it no longer stood; null while it stands.</summary>
    public DateOnly? EndedDate { get; init; }

    /// <summary>Path of the sub-assembly or location named; empty for the whole aircraft or base, null of an alert level.</summary>
    public string? Part { get; init; }

    /// <summary>Since when it would have said that things got worse; null of an alert level.</summary>
    public DateOnly? SinceDate { get; init; }

    /// <summary>Times the rate before, as it would have said; null of an alert level.</summary>
    public double? Ratio { get; init; }

    /// <summary>Findings there since; null of an alert level.</summary>
    public int? FoundSince { get; init; }

    /// <summary>Findings that the others' rates or lives give for the same looks since; null of an alert level.</summary>
    public double? ExpectedSince { get; init; }

    /// <summary>The rate that was above the level, findings per 1,000 flight hours; of an alert level only.</summary>
    public double? PerThousandHours { get; init; }

    /// <summary>The level, findings per 1,000 flight hours; of an alert level only.</summary>
    public double? LevelPerThousandHours { get; init; }
}
