using FleetTrend.Records;
using Npgsql;
using NpgsqlTypes;

namespace FleetTrend.Store.Observed;

/// <summary>
/// Observations kept per aircraft, one row each. A row holds from the moment it was observed until something about its aircraft changes:
/// its records, one that a newer revision takes from it, a merge, an aircraft with which it shares a serial number, a day that its records name, or the code.
/// </summary>
public sealed class ObservedStore(NpgsqlDataSource dataSource)
{
    /// <remarks>
    /// What was published has looked at every change until then: a row that is not newer than the moment holds unless something came
    /// between the published moment and it.
    /// </remarks>
    private const string States =
        """
        with wanted as (select id, registration from aircraft where @registration is null or registration = @registration),
        since as (select least(@as_of, coalesce((select max(as_of) from trends), '-infinity')) as moment),
        touched as (
            select record.aircraft_id from records record, since
            where record.accept_time > since.moment and record.accept_time <= @as_of and record.aircraft_id is not null
            union
            select sent.aircraft_id
            from since cross join records taken
            join records sent on sent.source_id = taken.source_id and sent.source_record_id = taken.source_record_id
            where taken.revision > 1 and taken.accept_time > since.moment and taken.accept_time <= @as_of
            union
            select sent.aircraft_id
            from since cross join finding_merges decided
            join records sent on (sent.source_id, sent.source_record_id) in (
                (decided.merged_source_id, decided.merged_record_id), (decided.kept_source_id, decided.kept_record_id))
            where decided.decide_time > since.moment and decided.decide_time <= @as_of
        ),
        serials as (
            select record_id, serial_number from installations where serial_number is not null
            union all
            select record_id, serial_number from removals where serial_number is not null
        ),
        own as (
            select distinct wanted.id as aircraft_id, content.serial_number
            from wanted
            join records record on record.aircraft_id = wanted.id and record.kind in (@installation, @removal)
            join serials content on content.record_id = record.id
        ),
        shared as (
            select own.aircraft_id, array_agg(distinct other.aircraft_id) as ids
            from own
            join serials content on content.serial_number = own.serial_number
            join records other on other.id = content.record_id and other.aircraft_id <> own.aircraft_id
            group by own.aircraft_id
        ),
        placed as (
            select record.aircraft_id, array_agg(distinct type_group.name) as names
            from wanted
            join records record on record.aircraft_id = wanted.id and record.kind = @airframe
            join assignments line on line.record_id = record.id
            join type_groups type_group on type_group.id = line.type_group_id
            where record.accept_time <= @as_of
            group by record.aircraft_id
        )
        select wanted.id, wanted.registration, placed.names, coalesce(shared.ids, '{}'),
               coalesce(kept.as_of <= @as_of and kept.code = @code and (kept.next_date is null or kept.next_date > @day), false),
               wanted.id in (select aircraft_id from touched) or shared.ids && (select array_agg(aircraft_id) from touched)
        from wanted
        join placed on placed.aircraft_id = wanted.id
        left join shared on shared.aircraft_id = wanted.id
        left join observed_aircraft kept on kept.aircraft_id = wanted.id
        """;

    /// <summary>The state of aircraft at a moment of <see cref="Histories.Knowledge.FixAsOfAsync"/>, or one before it; by registration.</summary>
    /// <param name="asOf">The moment.</param>
    /// <param name="code">Which code observes: rows of another are not kept.</param>
    /// <param name="registration">One aircraft alone; null for all.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<AircraftState>> ReadStatesAsync(DateTimeOffset asOf, Guid code, string? registration, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(States);
        command.CommandTimeout = 0;
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        command.Parameters.AddWithValue("code", code);
        command.Parameters.AddWithValue("registration", NpgsqlDbType.Text, (object?)registration ?? DBNull.Value);
        command.Parameters.AddWithValue("airframe", (int)RecordKind.Airframe);
        command.Parameters.AddWithValue("installation", (int)RecordKind.Installation);
        command.Parameters.AddWithValue("removal", (int)RecordKind.Removal);
        command.Parameters.AddWithValue("day", DateOnly.FromDateTime(asOf.UtcDateTime));
        var states = new List<AircraftState>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
        {
            var hasChanged = !await reader.IsDBNullAsync(5, ct) && reader.GetBoolean(5);
            states.Add(new AircraftState(
                reader.GetInt32(0), reader.GetString(1), reader.GetFieldValue<string[]>(2), reader.GetFieldValue<int[]>(3),
                reader.GetBoolean(4) && !hasChanged, hasChanged));
        }

        return [.. states.OrderBy(s => s.Registration, StringComparer.Ordinal)];
    }

    /// <summary>Kept observations of aircraft as bytes, in no order; null where there was no aircraft of that mark.</summary>
    public async Task<IReadOnlyDictionary<int, byte[]?>> ReadAsync(IReadOnlyCollection<int> aircraftIds, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("select aircraft_id, content from observed_aircraft where aircraft_id = any(@ids)");
        command.Parameters.AddWithValue("ids", aircraftIds.ToArray());
        var kept = new Dictionary<int, byte[]?>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            kept.Add(reader.GetInt32(0), await reader.IsDBNullAsync(1, ct) ? null : reader.GetFieldValue<byte[]>(1));
        return kept;
    }

    /// <summary>Keeps observations of a moment; newer ones that are there stay.</summary>
    /// <param name="asOf">The moment.</param>
    /// <param name="code">Which code observed.</param>
    /// <param name="observed">By aircraft; content is null where there was no aircraft of that mark.</param>
    /// <param name="ct">Cancels.</param>
    public async Task KeepAsync(
        DateTimeOffset asOf, Guid code, IReadOnlyList<(int AircraftId, DateOnly? NextDate, byte[]? Content)> observed, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand(
            """
            insert into observed_aircraft as kept (aircraft_id, as_of, code, next_date, content)
            select id, @as_of, @code, next_date, content
            from unnest(@ids, @next_dates, @contents) as observed (id, next_date, content) order by id
            on conflict (aircraft_id) do update
            set as_of = excluded.as_of, code = excluded.code, next_date = excluded.next_date, content = excluded.content
            where kept.as_of <= excluded.as_of
            """);
        command.Parameters.AddWithValue("as_of", asOf.ToUniversalTime());
        command.Parameters.AddWithValue("code", code);
        command.Parameters.AddWithValue("ids", observed.Select(o => o.AircraftId).ToArray());
        command.Parameters.AddWithValue("next_dates", NpgsqlDbType.Array | NpgsqlDbType.Date, observed.Select(o => o.NextDate).ToArray());
        command.Parameters.AddWithValue("contents", NpgsqlDbType.Array | NpgsqlDbType.Bytea, observed.Select(o => o.Content).ToArray());
        await command.ExecuteNonQueryAsync(ct);
    }
}
