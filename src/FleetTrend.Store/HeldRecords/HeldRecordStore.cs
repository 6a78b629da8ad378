using Npgsql;

namespace FleetTrend.Store.HeldRecords;

/// <summary>Records that wait for an aircraft to be registered, for it to have a location, or for a code of their source to get a meaning.</summary>
public sealed class HeldRecordStore(NpgsqlDataSource dataSource)
{
    // Waiting, and not superseded by a newer revision that was accepted.
    private const string Waits =
        """
        held.hold_time <= @as_of and (held.release_time is null or held.release_time > @as_of) and not exists (
            select from records later
            where later.source_id = held.source_id and later.source_record_id = held.source_record_id
              and later.revision > held.revision and later.revision > 1 and later.accept_time <= @as_of)
        """;

    private static readonly DateTime EndOfTime = DateTime.SpecifyKind(DateTime.MaxValue, DateTimeKind.Utc); // infinity: all that is committed

    /// <summary>How many records waited at a moment; one that a newer accepted revision had superseded did not.</summary>
    /// <param name="asOf">The moment of knowledge, included; with one of <c>Knowledge.FixAsOfAsync</c> the answer is the same for ever.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>Counts by registration mark, only of those that have any.</returns>
    public async Task<IReadOnlyDictionary<string, int>> CountAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            $"select held.registration, count(*)::integer from held_records held where {Waits} group by held.registration");
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            counts.Add(reader.GetString(0), reader.GetInt32(1));
        return counts;
    }

    /// <summary>Registration marks without an aircraft that records wait for now, by mark.</summary>
    /// <param name="count">Most to return.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<WaitedForAircraft>> ListUnregisteredAsync(int count, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            $"""
            select held.registration, count(*)::integer, min(held.hold_time) from held_records held
            where held.release_time is null and {Waits}
              and not exists (select from aircraft where aircraft.registration = held.registration)
            group by held.registration order by held.registration limit @count
            """);
        command.Parameters.AddWithValue("as_of", EndOfTime);
        command.Parameters.AddWithValue("count", count);
        var marks = new List<WaitedForAircraft>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            marks.Add(new WaitedForAircraft(reader.GetString(0), reader.GetInt32(1), reader.GetFieldValue<DateTimeOffset>(2)));
        return marks;
    }

    /// <summary>Records that wait now, oldest first.</summary>
    /// <param name="source">Name of a source; null for all.</param>
    /// <param name="registration">Registration mark in upper case; null for all.</param>
    /// <param name="pageSize">Most to return.</param>
    /// <param name="pageToken">From the page before; null or empty for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<HeldRecord>> ListAsync(
        string? source, string? registration, int pageSize, string? pageToken, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            $"""
            select held.id, held.record, held.hold_time from held_records held join sources on sources.id = held.source_id
            where held.release_time is null and held.id > @after and {Waits}
              and (@source::text is null or sources.name = @source) and (@registration::text is null or held.registration = @registration)
            order by held.id limit @count
            """);
        command.Parameters.AddWithValue("after", PageToken.ReadId(pageToken) ?? 0);
        command.Parameters.AddWithValue("as_of", EndOfTime);
        command.Parameters.AddWithValue("source", (object?)source ?? DBNull.Value);
        command.Parameters.AddWithValue("registration", (object?)registration ?? DBNull.Value);
        command.Parameters.AddWithValue("count", pageSize + 1);
        return PageToken.Cut(await ReadAsync(command, ct), pageSize, held => PageToken.Write(held.Id));
    }

    /// <summary>Records that may pass the rules now: their aircraft is registered, all their codes have a meaning, and one or the
    /// other is new since they were last tried.</summary>
    /// <param name="afterId">Only those after this one; 0 for the first.</param>
    /// <param name="count">Most to return.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<HeldRecord>> ReadReleasableAsync(long afterId, int count, CancellationToken ct)
    {
        // A writer that took its accept time before an attempt may commit after it: hence the overlap, longer than a transaction lasts.
        await using var command = dataSource.CreateCommand(
            """
            select held.id, held.record, held.hold_time from held_records held join aircraft on aircraft.registration = held.registration
            where held.release_time is null and held.id > @after
              and not exists (
                select from held_codes carried
                where carried.held_record_id = held.id and not exists (
                    select from source_codes known
                    where known.source_id = held.source_id and known.kind = carried.kind and known.code = carried.code))
              and (exists (
                    select from records record
                    where record.aircraft_id = aircraft.id and record.kind = 1
                      and (held.attempt_time is null or record.accept_time > held.attempt_time - interval '1 minute'))
                or exists (
                    select from held_codes carried
                    join source_codes known on known.source_id = held.source_id and known.kind = carried.kind and known.code = carried.code
                    where carried.held_record_id = held.id and known.set_time > held.attempt_time - interval '1 minute'))
            order by held.id limit @count
            """);
        command.Parameters.AddWithValue("after", afterId);
        command.Parameters.AddWithValue("count", count);
        return await ReadAsync(command, ct);
    }

    /// <summary>Keeps that records were tried and did not pass, so that they are left alone until something new arrives.</summary>
    /// <param name="ids">The records.</param>
    /// <param name="attemptTime">When the try began (UTC).</param>
    /// <param name="ct">Cancels.</param>
    public async Task KeepAttemptAsync(IReadOnlyCollection<long> ids, DateTimeOffset attemptTime, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            "update held_records set attempt_time = @attempt_time where id = any(@ids) and release_time is null");
        command.Parameters.AddWithValue("attempt_time", attemptTime.ToUniversalTime());
        command.Parameters.AddWithValue("ids", ids.ToArray());
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>The time of the database (UTC), by which attempts and what is new are compared.</summary>
    public async Task<DateTimeOffset> ReadTimeAsync(CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("select clock_timestamp()");
        return new DateTimeOffset((DateTime)(await command.ExecuteScalarAsync(ct))!);
    }

    private static async Task<IReadOnlyList<HeldRecord>> ReadAsync(NpgsqlCommand command, CancellationToken ct)
    {
        var held = new List<HeldRecord>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            held.Add(new HeldRecord(reader.GetInt64(0), reader.GetFieldValue<byte[]>(1), reader.GetFieldValue<DateTimeOffset>(2)));
        return held;
    }
}
