namespace FleetTrend.Trends.RenewalAges;

/// <summary>When to renew parts of a kind on a type group, and how often to look at them, by how long they last there and by what the director has
/// set.</summary>
public sealed record RenewalAge
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Name of the kind of part.</summary>
    public required string Kind { get; init; }

    /// <summary>Its title.</summary>
    public required string Title { get; init; }

    /// <summary>The base where its parts last differently; null for all bases, or all others.</summary>
    public string? Base { get; init; }

    /// <summary>Failures behind it.</summary>
    public required int Failures { get; init; }

    /// <summary>Lives behind it.</summary>
    public required int Lives { get; init; }

    /// <summary>What a failure in service costs, where a planned renewal costs one: as set.</summary>
    public required double CostRatio { get; init; }

    /// <summary>Allowed chance that a part which was good at a look fails before the next: as set.</summary>
    public required double AllowedChance { get; init; }

    /// <summary>The look interval that is set, flight hours.</summary>
    public required double SetLookHours { get; init; }

    /// <summary>The maker's or the regulation's greatest renewal age, hours; null where none has been told.</summary>
    public double? MakerRenewalHours { get; init; }

    /// <summary>The maker's or the regulation's greatest look interval, hours; null where none has been told.</summary>
    public double? MakerLookHours { get; init; }

    /// <summary>What follows.</summary>
    public required RenewalFinding Finding { get; init; }

    /// <summary>Why nothing is known; null where something is.</summary>
    public string? NotEnoughData { get; init; }

    /// <summary>Weibull shape: above one an old part fails sooner than a new one. Null where nothing is known.</summary>
    public Figure? Shape { get; init; }

    /// <summary>The age at which renewing costs least, hours; no value where that lies outside the ages that were watched. Null where none is sought.</summary>
    public Figure? CheapestAge { get; init; }

    /// <summary>The age to renew at: the cheapest or the maker's, whichever comes first; hours. Null where it is not shown that renewing helps.</summary>
    public double? AgeHours { get; init; }

    /// <summary>Share of the cost of running to failure that renewing at <see cref="AgeHours"/> saves; null where there is none.</summary>
    public Figure? Saved { get; init; }

    /// <summary>The age up to which looks are counted, hours: <see cref="AgeHours"/>, else the oldest age watched, or the maker's where that comes
    /// first.</summary>
    public double? LookedAtUntilHours { get; init; }

    /// <summary>The longest interval between looks, up to that age, that keeps the allowed chance, hours.</summary>
    public Figure? LongestLook { get; init; }

    /// <summary>The same, or the maker's where that is shorter; hours.</summary>
    public double? LookHours { get; init; }

    /// <summary>Greatest chance that a part which was good at a look fails before the next, with looks as they are set, up to that age.</summary>
    public Figure? ChanceAtSet { get; init; }

    /// <summary>How many failures would show that it wears out, if it does as the estimate says; null elsewhere.</summary>
    public int? FailuresToTell { get; init; }

    /// <summary>The law that fits the lives better than the Weibull law of these figures; null where that fits better.</summary>
    public string? BetterLaw { get; init; }
}
