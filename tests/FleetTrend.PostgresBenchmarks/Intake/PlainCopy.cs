using FleetTrend.PostgresBenchmarks.Postgres;

namespace FleetTrend.PostgresBenchmarks.Intake;

/// <summary>The yardstick: psql copies the very rows that the API would write into the very tables, with their indexes,
/// foreign keys and checks, in one transaction.</summary>
internal sealed class PlainCopy(BenchmarkDatabase database, string folder)
{
    /// <summary>Seconds that psql takes for these findings.</summary>
    public async Task<double> RunAsync(long from, int count)
    {
        var records = Path.Combine(folder, "records.tsv");
        var findings = Path.Combine(folder, "findings.tsv");
        var sourceId = await database.ReadAsync<int>("select id from sources where name = $1", BenchmarkFleet.Source);
        var aircraftIds = await database.ListAsync<int>("select id from aircraft order by registration");
        var firstId = await database.ReadAsync<long>(
            "select setval('records_id_seq', nextval('records_id_seq') + $1) - $1", (long)count);
        await BenchmarkFleet.WriteRowsAsync(records, findings, firstId, sourceId, aircraftIds, Numbers(from, count));
        return await Psql.TimeAsync(
            database.ConnectionString,
            $"""
             begin;
             \copy records (id, source_id, source_record_id, revision, kind, aircraft_id, accept_time, content_hash) from '{records}'
             \copy findings (record_id, location, found_date, time_in_service_hours, condition, grade, size_mm, trace_colour, method, same_event_as, note) from '{findings}'
             commit;
             """);
    }

    public static IEnumerable<long> Numbers(long from, int count)
    {
        for (var number = from; number < from + count; number++)
            yield return number;
    }
}
