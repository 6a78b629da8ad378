using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.FailureChances;

/// <summary>Chances before the next look of the parts of one aircraft, by the lives of their like.</summary>
public sealed record FailureChance
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its base.</summary>
    public required string Base { get; init; }

    /// <summary>Its type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Parts with a chance, the most likely to fail first.</summary>
    public required IReadOnlyList<PartChance> Parts { get; init; }

    /// <summary>Failures before the next look, in the mean: the sum of the chances.</summary>
    public required double Expected { get; init; }

    /// <summary>Lower limit of that mean.</summary>
    public required double Lower { get; init; }

    /// <summary>Upper limit of that mean.</summary>
    public required double Upper { get; init; }

    /// <summary>Chance that at least one fails.</summary>
    public required double AnyChance { get; init; }

    /// <summary>Confidence of the limits.</summary>
    public required double Confidence { get; init; }

    /// <summary>Parts in service of which the age is not known.</summary>
    public required int AgeUnknown { get; init; }

    /// <summary>Parts of known age of kinds that have failed too seldom for a life distribution.</summary>
    public required int TooFewFailures { get; init; }

    /// <summary>What each part with a chance was last seen at, and since when it is in service.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
