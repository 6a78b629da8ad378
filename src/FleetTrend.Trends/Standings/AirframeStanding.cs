using FleetTrend.Records.Findings;
using FleetTrend.Trends.Chances;

namespace FleetTrend.Trends.Standings;

/// <summary>One aircraft against the others of its type group, for one condition: observed against expected.</summary>
public sealed record AirframeStanding
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its base.</summary>
    public required string Base { get; init; }

    /// <summary>The type group whose other aircraft are the norm.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>Events on this aircraft.</summary>
    public required int Observed { get; init; }

    /// <summary>Events besides: the first look found them, so they are in no rate.</summary>
    public int PresentAtEntry { get; init; }

    /// <summary>Events besides: found in no watched hours, so in no rate.</summary>
    public int NotWatched { get; init; }

    /// <summary>Events it would have had in its own exposure, location by location, at the rate of the others.</summary>
    public required double Expected { get; init; }

    /// <summary>The same with its interval, from the others' counts; null in trends stored before there was one.</summary>
    public Figure? Expectation { get; init; }

    /// <summary>Its hours of exposure, summed over the locations where the condition makes sense.</summary>
    public required double ExposureHours { get; init; }

    /// <summary>Aircraft in the norm.</summary>
    public required int OthersCount { get; init; }

    /// <summary>Events of the others.</summary>
    public required int OthersEvents { get; init; }

    /// <summary>Observed over expected, with its interval.</summary>
    public required Figure Ratio { get; init; }

    /// <summary>Exact one-sided chance of at least this many, were the aircraft like the others.</summary>
    public required PValue PValue { get; init; }

    /// <summary>The same after allowing for all aircraft and conditions looked at together (Benjamini and Hochberg 1995).</summary>
    public required double QValue { get; init; }

    /// <summary>The locations that drive it, most first.</summary>
    public required IReadOnlyList<LocationShare> Drivers { get; init; }

    /// <summary>Day of the first event within; null where none.</summary>
    public DateOnly? SinceDate { get; init; }
}
