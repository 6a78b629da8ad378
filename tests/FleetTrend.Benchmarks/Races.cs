namespace FleetTrend.Benchmarks;

/// <summary>All races, in the order in which they are run.</summary>
internal static class Races
{
    public static IEnumerable<Race> All => [.. LifeRaces.All, .. RecurrenceRaces.All];
}
