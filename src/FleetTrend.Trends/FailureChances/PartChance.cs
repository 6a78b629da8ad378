namespace FleetTrend.Trends.FailureChances;

/// <summary>The chance that a part in service fails before its next look, given that it was last seen good.</summary>
public sealed record PartChance
{
    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Name of the kind.</summary>
    public required string Kind { get; init; }

    /// <summary>Age when it was last seen good, hours; its age at installation where nobody has looked since.</summary>
    public required double GoodHours { get; init; }

    /// <summary>Age now, by the latest hours known.</summary>
    public required double AgeHours { get; init; }

    /// <summary>Age at the next look: a look interval after the last, or now where that is past.</summary>
    public required double NextLookHours { get; init; }

    /// <summary>The chance that it fails, or has failed, between the last good look and the next.</summary>
    public required double Chance { get; init; }

    /// <summary>Lower limit of the chance.</summary>
    public required double Lower { get; init; }

    /// <summary>Upper limit of the chance.</summary>
    public required double Upper { get; init; }
}
