using FleetTrend.PostgresBenchmarks.Postgres;

namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>The yardstick of a refresh: psql copies the rows that a refresh has to read, and drops them.</summary>
internal static class CopyOut
{
    private static readonly string[] Tables =
    [
        "records", "airframes", "assignments", "meter_readings", "meter_changes", "installations", "removals", "inspections",
        "location_looks", "findings", "actions",
    ];

    /// <summary>Seconds that the copy takes.</summary>
    public static Task<double> TimeAsync(BenchmarkDatabase database) =>
        Psql.TimeAsync(database.ConnectionString, string.Join('\n', Tables.Select(table => $"\\copy {table} to '/dev/null'")));
}
