using FleetTrend.Records.Sources;

namespace FleetTrend.Store.DataProblems;

/// <summary>Something that a refresh found not to add up; the store knows since when, and what people answered.</summary>
public sealed record FoundDataProblem
{
    /// <summary>The same for the same problem from refresh to refresh.</summary>
    public required string Identity { get; init; }

    /// <summary>The same while what a person would look at is the same; a closed problem opens again when this changes.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>Name of the kind of problem.</summary>
    public required string Kind { get; init; }

    /// <summary>The aircraft; null where none is known.</summary>
    public string? Registration { get; init; }

    /// <summary>The other aircraft where two are concerned.</summary>
    public string? OtherRegistration { get; init; }

    /// <summary>The day it concerns.</summary>
    public required DateOnly ProblemDate { get; init; }

    /// <summary>The rule that is broken, in words.</summary>
    public required string Rule { get; init; }

    /// <summary>What is wrong, with the values.</summary>
    public required string Description { get; init; }

    /// <summary>The records it concerns.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
