namespace FleetTrend.Trends.BackTests;

/// <summary>How often one method would have called.</summary>
public sealed record BackTestMethod
{
    /// <summary>Name of the watch.</summary>
    public const string Watch = "watch";

    /// <summary>Name of the flag.</summary>
    public const string Flag = "flag";

    /// <summary>Short name, for programs; it never changes.</summary>
    public required string Name { get; init; }

    /// <summary>What it is called in a table.</summary>
    public required string Title { get; init; }

    /// <summary>What it does, in words.</summary>
    public required string Description { get; init; }

    /// <summary>Where it comes from.</summary>
    public required string Source { get; init; }

    /// <summary>Calls of aircraft.</summary>
    public required int AircraftCalls { get; init; }

    /// <summary>Calls of bases.</summary>
    public required int BaseCalls { get; init; }

    /// <summary>Calls of both per 50 aircraft-years; null where nothing was watched.</summary>
    public double? Per50AircraftYears { get; init; }

    /// <summary>
    /// Of its calls, those that a watch or a flag made too: for the same aircraft or base and the same condition, at one time. Null of those two.
    /// </summary>
    public int? AlsoWatchedOrFlagged { get; init; }

    /// <summary>Of the flags, those that it made too; null of watch and flag.</summary>
    public int? FlagsNamed { get; init; }

    /// <summary>Of the watches, those that it made too; null of watch and flag.</summary>
    public int? WatchesNamed { get; init; }

    /// <summary>Its calls by calendar month, from the month of the first day.</summary>
    public required IReadOnlyList<int> CallsByMonth { get; init; }

    /// <summary>All its calls.</summary>
    public int Calls => AircraftCalls + BaseCalls;
}
