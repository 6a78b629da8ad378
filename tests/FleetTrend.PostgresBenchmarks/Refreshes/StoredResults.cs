using FleetTrend.PostgresBenchmarks.Postgres;

namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>What refreshes have written: the rows of all tables that were empty while nothing had been computed. So it counts
/// whatever the product stores, without knowing it.</summary>
internal sealed class StoredResults
{
    private const string KeptObservations = "observed_aircraft";

    private readonly BenchmarkDatabase database;
    private readonly IReadOnlyList<string> tableNames;

    private StoredResults(BenchmarkDatabase database, IReadOnlyList<string> tables)
    {
        this.database = database;
        tableNames = tables;
    }

    /// <summary>Comes after the worker's start, which may add tables, and before the first refresh.</summary>
    public static async Task<StoredResults> FindAsync(BenchmarkDatabase database)
    {
        var tables = await database.ListAsync<string>(
            """
            select quote_ident(tablename) from pg_tables
            where schemaname = 'public' and tablename <> 'refresh_requests' order by 1
            """);
        var empty = new List<string>();
        foreach (var table in tables)
        {
            if (!await database.ReadAsync<bool>($"select exists(select from {table})"))
                empty.Add(table);
        }

        return new StoredResults(database, empty);
    }

    /// <summary>Removes all of it: the next refresh is a full one.</summary>
    public Task EmptyAsync() => database.ExecuteAsync($"truncate {string.Join(", ", tableNames)}");

    /// <summary>Megabytes that the results take on the disk, indexes included, without the room of rows that are gone.</summary>
    public Task<double> MegabytesAsync() => MegabytesAsync([.. tableNames.Where(table => table != KeptObservations)]);

    /// <summary>The same of the observations that are kept per aircraft, one row each, whatever the number of refreshes.</summary>
    public Task<double> KeptMegabytesAsync() => MegabytesAsync([KeptObservations]);

    private async Task<double> MegabytesAsync(string[] tables)
    {
        await database.ExecuteAsync($"vacuum full {string.Join(", ", tables)}");
        var bytes = await database.ReadAsync<long>(
            "select coalesce(sum(pg_total_relation_size(name::regclass)), 0)::bigint from unnest($1) as name",
            (object)tables);
        return bytes / 1e6;
    }

    /// <summary>Makes all of it a day older.</summary>
    public async Task AgeByOneDayAsync()
    {
        foreach (var table in tableNames)
        {
            var columns = await database.ListAsync<string>(
                """
                select quote_ident(attname) from pg_attribute
                where attrelid = $1::regclass and atttypid = 'timestamptz'::regtype and attnum > 0 and not attisdropped
                """,
                table);
            var older = columns.Select(c => $"{c} = {c} - interval '1 day'");
            if (columns.Count > 0)
                await database.ExecuteAsync($"update {table} set {string.Join(", ", older)}");
        }
    }
}
