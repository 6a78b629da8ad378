using System.Diagnostics;
using Npgsql;

namespace FleetTrend.IntakeBenchmark;

/// <summary>The yardstick: psql copies the very rows that the API would write into the very tables, with their indexes, foreign
/// keys and checks, in one transaction.</summary>
internal sealed class PlainCopy(NpgsqlDataSource database, string connectionString, string folder)
{
    /// <summary>Seconds that psql takes for these findings.</summary>
    public async Task<double> RunAsync(long from, int count)
    {
        var records = Path.Combine(folder, "records.tsv");
        var findings = Path.Combine(folder, "findings.tsv");
        var sourceId = (int)(await ScalarAsync($"select id from sources where name = '{BenchmarkFleet.Source}'"))!;
        var aircraftIds = new List<int>();
        await using (var command = database.CreateCommand("select id from aircraft order by registration"))
        await using (var reader = await command.ExecuteReaderAsync())
        {
            while (await reader.ReadAsync())
                aircraftIds.Add(reader.GetInt32(0));
        }

        var firstId = (long)(await ScalarAsync(FormattableString.Invariant(
            $"select setval('records_id_seq', nextval('records_id_seq') + {count}) - {count}")))!;
        await BenchmarkFleet.WriteRowsAsync(records, findings, firstId, sourceId, aircraftIds, Numbers(from, count));
        var script = Path.Combine(folder, "copy.sql");
        await File.WriteAllTextAsync(script,
            $"""
             begin;
             \copy records (id, source_id, source_record_id, revision, kind, aircraft_id, accept_time, content_hash) from '{records}'
             \copy findings (record_id, location, found_date, time_in_service_hours, condition, grade, size_mm, trace_colour, method, same_event_as, note) from '{findings}'
             commit;
             """);
        var target = new NpgsqlConnectionStringBuilder(connectionString);
        var start = new ProcessStartInfo("psql",
            ["-q", "-v", "ON_ERROR_STOP=1", "-h", target.Host!, "-p", $"{target.Port}", "-U", target.Username!, "-d", target.Database!, "-f", script])
        {
            Environment = { ["PGPASSWORD"] = target.Password },
        };
        var clock = Stopwatch.StartNew();
        using var psql = Process.Start(start)!;
        await psql.WaitForExitAsync();
        var seconds = clock.Elapsed.TotalSeconds;
        return psql.ExitCode == 0 ? seconds : throw new InvalidOperationException($"psql ended with {psql.ExitCode}.");
    }

    public static IEnumerable<long> Numbers(long from, int count)
    {
        for (var number = from; number < from + count; number++)
            yield return number;
    }

    private async Task<object?> ScalarAsync(string statement)
    {
        await using var command = database.CreateCommand(statement);
        return await command.ExecuteScalarAsync();
    }
}
