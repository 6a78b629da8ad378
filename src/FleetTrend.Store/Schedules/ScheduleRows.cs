using FleetTrend.Records.Schedules;
using Npgsql;

namespace FleetTrend.Store.Schedules;

/// <summary>Reads and writes rows of schedules.</summary>
internal static class ScheduleRows
{
    /// <summary>The schedules of a condition: the whole fleet first, then bases, then type groups.</summary>
    public static async Task<List<ReportSchedule>> ReadAsync(
        NpgsqlConnection connection, string condition, CancellationToken ct, params IReadOnlyList<(string Name, object Value)> parameters)
    {
        await using var command = new NpgsqlCommand(
            $"""
            select id, name, base, type_group, day_of_week, local_time, time_zone, follows_settings, is_paused, next_due_time, last_due_time,
                   last_made_time, last_report_id, send_asked_time, failure,
                   array(select address from schedule_recipients where schedule_id = id order by address)
            from report_schedules
            where remove_time is null and {condition}
            order by type_group is not null, base <> '*', base, type_group, name
            """,
            connection);
        foreach (var (name, value) in parameters)
            command.Parameters.AddWithValue(name, value);
        await using var reader = await command.ExecuteReaderAsync(ct);
        var schedules = new List<ReportSchedule>();
        while (await reader.ReadAsync(ct))
        {
            schedules.Add(new ReportSchedule
            {
                ScheduleId = reader.GetInt64(0),
                Name = reader.GetString(1),
                Scope = ReportScope.Of(reader.GetString(2), reader.IsDBNull(3) ? null : reader.GetString(3)),
                Slot = new WeeklySlot((DayOfWeek)reader.GetInt32(4), reader.GetFieldValue<TimeOnly>(5)),
                TimeZone = reader.GetString(6),
                FollowsSettings = reader.GetBoolean(7),
                IsPaused = reader.GetBoolean(8),
                NextDueTime = Moment(9),
                LastDueTime = Moment(10),
                LastMadeTime = Moment(11),
                LastReportId = reader.IsDBNull(12) ? null : reader.GetInt64(12),
                SendAskedTime = Moment(13),
                Failure = reader.IsDBNull(14) ? null : reader.GetString(14),
                Recipients = reader.GetFieldValue<string[]>(15),
            });
        }

        return schedules;

        DateTimeOffset? Moment(int column) => reader.IsDBNull(column) ? null : reader.GetFieldValue<DateTimeOffset>(column);
    }

    /// <summary>Adds a schedule, or changes what people set of the one of that name.</summary>
    /// <returns>Its identifier; null where it was only to be added and the name is taken.</returns>
    public static async Task<long?> WriteAsync(NpgsqlConnection connection, ReportSchedule schedule, bool mayChange, CancellationToken ct)
    {
        var change = mayChange
            ? """
              update set base = excluded.base, type_group = excluded.type_group, day_of_week = excluded.day_of_week, local_time = excluded.local_time,
                         time_zone = excluded.time_zone, follows_settings = excluded.follows_settings, is_paused = excluded.is_paused,
                         next_due_time = excluded.next_due_time, failure = null, retry_time = null,
                         last_report_id = case
                             when report_schedules.base = excluded.base and report_schedules.type_group is not distinct from excluded.type_group
                             then report_schedules.last_report_id end
              """
            : "nothing";
        await using var command = new NpgsqlCommand(
            $"""
            insert into report_schedules (name, base, type_group, day_of_week, local_time, time_zone, follows_settings, is_paused, next_due_time)
            values (@name, @base, @type_group, @day, @time, @zone, @follows, @paused, @next)
            on conflict (name) where remove_time is null do {change}
            returning id
            """,
            connection);
        command.Parameters.AddWithValue("name", schedule.Name);
        command.Parameters.AddWithValue("base", schedule.Scope.Base ?? ReportScope.AllBases);
        command.Parameters.Add(Nullable("type_group", NpgsqlTypes.NpgsqlDbType.Text, schedule.Scope.TypeGroup));
        command.Parameters.AddWithValue("day", (int)schedule.Slot.Day);
        command.Parameters.AddWithValue("time", schedule.Slot.Time);
        command.Parameters.AddWithValue("zone", schedule.TimeZone);
        command.Parameters.AddWithValue("follows", schedule.FollowsSettings);
        command.Parameters.AddWithValue("paused", schedule.IsPaused);
        command.Parameters.Add(Nullable("next", NpgsqlTypes.NpgsqlDbType.TimestampTz, schedule.NextDueTime?.ToUniversalTime()));
        return (long?)await command.ExecuteScalarAsync(ct);
    }

    /// <summary>Puts recipients in the place of those who were there.</summary>
    public static async Task WriteRecipientsAsync(NpgsqlConnection connection, long scheduleId, IReadOnlyList<string> addresses, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            """
            with gone as (delete from schedule_recipients where schedule_id = @id and not address = any(@addresses))
            insert into schedule_recipients (schedule_id, address) select @id, unnest(@addresses) on conflict do nothing
            """,
            connection);
        command.Parameters.AddWithValue("id", scheduleId);
        command.Parameters.AddWithValue("addresses", addresses.ToArray());
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>A parameter that may be null.</summary>
    public static NpgsqlParameter Nullable(string name, NpgsqlTypes.NpgsqlDbType type, object? value) => new(name, type) { Value = value ?? DBNull.Value };
}
