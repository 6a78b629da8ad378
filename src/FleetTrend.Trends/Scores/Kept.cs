namespace FleetTrend.Trends.Scores;

/// <summary>What was published of a type group at a moment, and kept.</summary>
/// <typeparam name="T">One forecast.</typeparam>
/// <param name="AsOf">The moment of knowledge behind it (UTC).</param>
/// <param name="Items">The forecasts.</param>
public sealed record Kept<T>(DateTimeOffset AsOf, IReadOnlyList<T> Items)
{
    /// <summary>The day of the moment.</summary>
    public DateOnly Date => DateOnly.FromDateTime(AsOf.UtcDateTime);
}
