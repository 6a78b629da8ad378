using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>One aircraft of the synthetic fleet before it flies.</summary>
internal sealed record Tail
{
    public required string Registration { get; init; }

    public required string Base { get; init; }

    public required TypeGroup TypeGroup { get; init; }

    public required Layout Layout { get; init; }

    public required DateOnly WatchStart { get; init; }

    public required double HoursAtStart { get; init; }

    public required double HoursPerDay { get; init; }

    /// <summary>Whether ages of the parts that were in at the start are known.</summary>
    public required bool AgesKnown { get; init; }

    /// <summary>Factor on the life of exhaust gaskets: below one where the torque practice is poor.</summary>
    public double GasketLifeFactor { get; init; } = 1;

    /// <summary>From this day on gaskets that are fitted have no such factor; null where nothing changes.</summary>
    public DateOnly? GasketsBetterFrom { get; init; }

    /// <summary>Times the rate of cracks at every location.</summary>
    public double CrackFactor { get; init; } = 1;

    /// <summary>A location that cracks at a rate of its own per 1,000 h, or null.</summary>
    public string? TroubledLocation { get; init; }

    /// <summary>That rate.</summary>
    public double TroubledRatePer1000Hours { get; init; }

    /// <summary>What is done each time at the troubled location.</summary>
    public ActionKind TroubledAction { get; init; }

    /// <summary>The first day of the trouble; null where it was so from the start.</summary>
    public DateOnly? TroubledFrom { get; init; }

    /// <summary>The first day without it: what had cracked is made again. Null where it stays.</summary>
    public DateOnly? TroubledUntil { get; init; }

    /// <summary>Share of what is there that is written down at a look.</summary>
    public double WrittenShare { get; init; } = 1;

    /// <summary>The meter is replaced half way through.</summary>
    public bool MeterReplaced { get; init; }

    /// <summary>Somebody swaps digits of one reading.</summary>
    public bool MisreadOnce { get; init; }
}
