using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Changes;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Flags;

/// <summary>A statement that an aircraft, a location or a base departs from the norm, with its evidence.</summary>
public sealed record ProposedFlag
{
    /// <summary>What it is about, the same from week to week: a flag that is open is not raised again.</summary>
    public required string Subject { get; init; }

    /// <summary>What it says.</summary>
    public required FlagKind Kind { get; init; }

    /// <summary>How strong it is; what was stored before it was told is a flag.</summary>
    public FlagTier Tier { get; init; } = FlagTier.Flag;

    /// <summary>The aircraft; null for a base.</summary>
    public string? Registration { get; init; }

    /// <summary>The base.</summary>
    public required string Base { get; init; }

    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The condition; null where it is about a life.</summary>
    public Condition? Condition { get; init; }

    /// <summary>Kind of part, for a flag about lives.</summary>
    public string? PartKind { get; init; }

    /// <summary>Title of <see cref="PartKind"/>, for people; null where there is none, or stored before it was kept.</summary>
    public string? PartKindTitle { get; init; }

    /// <summary>The locations that drive it, most first.</summary>
    public required IReadOnlyList<string> Locations { get; init; }

    /// <summary>What gets worse, since when and how sure; null for a base that differs from the others only, or where an earlier version raised it.</summary>
    public Change? Change { get; init; }

    /// <summary>
    /// The day on which the flag before, about the same, was closed: what is counted here came after it. Null where none was.
    /// </summary>
    public DateOnly? CountedAfterDate { get; init; }

    /// <summary>
    /// Found over expected, of a change since it began; of a base beside the others, median life here over elsewhere, or where only early failures are
    /// called, their hazard here over elsewhere.
    /// </summary>
    public required Figure Ratio { get; init; }

    /// <summary>For a base, the comparison that raised it; null elsewhere, or stored before it was told.</summary>
    public BaseContrast? Contrast { get; init; }

    /// <summary>Events, or failures, observed.</summary>
    public required int Observed { get; init; }

    /// <summary>Events expected; null where it is about a life.</summary>
    public double? Expected { get; init; }

    /// <summary>The same with its interval and the others' counts, of a drift or a repeat of an earlier version; null elsewhere.</summary>
    public Figure? Expectation { get; init; }

    /// <summary>p-value of the test; null for a change, whose <see cref="Change"/> says how sure it is.</summary>
    public PValue? PValue { get; init; }

    /// <summary>q-value: the expected share of false alarms among flags this strong or stronger; null for a change.</summary>
    public double? QValue { get; init; }

    /// <summary>What was tested and against whom, with the source of the test; null for a change.</summary>
    public string? Test { get; init; }

    /// <summary>All that was tested together, which is what the q-value allows for; null for a change.</summary>
    public string? Family { get; init; }

    /// <summary>First day of the four weeks in which a change began, as probably earlier as later; of an earlier version, the first event.</summary>
    public DateOnly? SinceDate { get; init; }

    /// <summary>One sentence in a mechanic's words.</summary>
    public required string Statement { get; init; }

    /// <summary>What to check, a line each.</summary>
    public required IReadOnlyList<string> WhatToCheck { get; init; }
}
