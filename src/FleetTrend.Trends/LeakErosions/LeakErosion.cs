namespace FleetTrend.Trends.LeakErosions;

/// <summary>From the first trace of a leak at an exhaust port to an eroded port face, by the flight hours for which leaks were left, on a type group.</summary>
public sealed record LeakErosion
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Leaks at joints that have a port face: each once from its first trace until it was closed.</summary>
    public required int Leaks { get; init; }

    /// <summary>On how many aircraft.</summary>
    public required int Aircraft { get; init; }

    /// <summary>Of them, those whose port face was eroded when the leak was first seen.</summary>
    public required int ErodedAtFirst { get; init; }

    /// <summary>Of the others, those whose port face was found eroded while the leak was left.</summary>
    public required int Eroded { get; init; }

    /// <summary>Of the others, those whose port face nobody looked at while the leak was left: they tell nothing.</summary>
    public required int NotLookedAt { get; init; }

    /// <summary>Share eroded by 50, 100 and 200 flight hours left, of those whose face was not eroded when first seen.</summary>
    public required IReadOnlyList<ShareEroded> Shares { get; init; }

    /// <summary>Leaks that are open now, the greatest chance first.</summary>
    public required IReadOnlyList<OpenLeak> Open { get; init; }
}
