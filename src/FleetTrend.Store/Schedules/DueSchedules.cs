using FleetTrend.Records.Schedules;
using FleetTrend.Store.Histories;
using Npgsql;

namespace FleetTrend.Store.Schedules;

/// <summary>Schedules as a worker sees them: which is due, what came of it.</summary>
public sealed class DueSchedules(NpgsqlDataSource dataSource)
{
    private const int MaxFailureLength = 500;

    /// <summary>
    /// Sees to it that the whole fleet and every base where an aircraft flies have had a schedule once, that those that follow the settings do, and
    /// that each knows when it is due. One that was carried over from before there were schedules is due late where its last report is missing.
    /// </summary>
    public async Task PrepareAsync(ShippedSlot shipped, DateTimeOffset now, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(shipped);
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        foreach (var scope in await WithoutScheduleAsync(connection, ct))
            await ScheduleRows.WriteAsync(connection, shipped.ScheduleOf(scope, now), mayChange: false, ct);
        foreach (var schedule in await ScheduleRows.ReadAsync(connection, "follows_settings", ct))
        {
            var isOurs = schedule.Slot == shipped.Slot && schedule.TimeZone == shipped.TimeZone.Id;
            if (!isOurs || (schedule.NextDueTime is null && !schedule.IsPaused))
                await MoveAsync(connection, schedule, shipped, await FirstDueAsync(connection, schedule, shipped, now, ct), ct);
        }
    }

    /// <summary>What is due at a moment, or asked for.</summary>
    public async Task<IReadOnlyList<ReportSchedule>> ReadAsync(DateTimeOffset now, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        return await ScheduleRows.ReadAsync(
            connection,
            "((not is_paused and next_due_time <= @now) or send_asked_time is not null) and (retry_time is null or retry_time <= @now)", ct,
            ("now", now.ToUniversalTime()));
    }

    /// <summary>Who gets the report of a scope by the schedules that are not paused.</summary>
    public async Task<(IReadOnlyList<long> ScheduleIds, IReadOnlyList<string> Addresses)> RecipientsOfAsync(ReportScope scope, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(scope);
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        var schedules = await ScheduleRows.ReadAsync(
            connection, "not is_paused and base = @base and coalesce(type_group, '') = @type_group", ct,
            ("base", scope.Base ?? ReportScope.AllBases), ("type_group", scope.TypeGroup ?? ""));
        return ([.. schedules.Select(s => s.ScheduleId)], [.. schedules.SelectMany(s => s.Recipients).Distinct(StringComparer.Ordinal)]);
    }

    /// <summary>The recipients of some schedules were owed a report.</summary>
    public async Task OwedAsync(IReadOnlyList<long> scheduleIds, long reportId, CancellationToken ct)
    {
        await using var command = dataSource.CreateCommand("update report_schedules set last_report_id = @report where id = any(@ids)");
        command.Parameters.AddWithValue("ids", scheduleIds.ToArray());
        command.Parameters.AddWithValue("report", reportId);
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>What was due or asked for is done. A change that people made meanwhile stays.</summary>
    /// <param name="schedule">As it was read.</param>
    /// <param name="made">The due moment that was answered; null where it was only asked for.</param>
    /// <param name="next">When it is due next.</param>
    /// <param name="now">The moment.</param>
    /// <param name="ct">Cancels.</param>
    public async Task DoneAsync(ReportSchedule schedule, DueMoment? made, DueMoment next, DateTimeOffset now, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        ArgumentNullException.ThrowIfNull(next);
        await using var command = dataSource.CreateCommand(
            """
            update report_schedules
            set next_due_time = case when @due is not null and next_due_time = @seen then @next else next_due_time end,
                last_due_time = coalesce(@due, last_due_time), last_made_time = case when @due is null then last_made_time else @now end,
                send_asked_time = case when send_asked_time = @asked then null else send_asked_time end,
                failure = null, retry_time = null
            where id = @id
            """);
        command.Parameters.AddWithValue("id", schedule.ScheduleId);
        Add("due", made?.Time);
        Add("seen", schedule.NextDueTime);
        Add("next", next.Time);
        Add("now", now);
        Add("asked", schedule.SendAskedTime);
        await command.ExecuteNonQueryAsync(ct);

        void Add(string name, DateTimeOffset? moment) =>
            command.Parameters.Add(ScheduleRows.Nullable(name, NpgsqlTypes.NpgsqlDbType.TimestampTz, moment?.ToUniversalTime()));
    }

    /// <summary>An attempt failed; the next one is made at a later moment.</summary>
    /// <param name="scheduleId">The schedule.</param>
    /// <param name="failure">Why, in words; cut to 500 characters.</param>
    /// <param name="retryTime">When it is tried again.</param>
    /// <param name="ct">Cancels.</param>
    public async Task FailedAsync(long scheduleId, string failure, DateTimeOffset retryTime, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(failure);
        await using var command = dataSource.CreateCommand("update report_schedules set failure = @failure, retry_time = @retry where id = @id");
        command.Parameters.AddWithValue("id", scheduleId);
        command.Parameters.AddWithValue("failure", (failure.Length > MaxFailureLength ? failure[..MaxFailureLength] : failure).Replace('\0', ' '));
        command.Parameters.AddWithValue("retry", retryTime.ToUniversalTime());
        await command.ExecuteNonQueryAsync(ct);
    }

    private static async Task<List<ReportScope>> WithoutScheduleAsync(NpgsqlConnection connection, CancellationToken ct)
    {
        // The base where an aircraft that is not retired is today, by the newest revision of its record.
        await using var command = new NpgsqlCommand(
            $"""
            select '*' as base where not exists (select from report_schedules where base = '*' and type_group is null)
            union
            select newest.base
            from (
                select distinct on (aircraft.id) line.base, airframes.retired_date
                from aircraft
                cross join lateral (select * from records where records.aircraft_id = aircraft.id and records.kind = 1 offset 0) record
                join airframes on airframes.record_id = record.id
                join assignments line on line.record_id = record.id
                where {NewestRevision.Condition}
                order by aircraft.id, line.from_date desc) newest
            where retired_date is null and not exists (select from report_schedules where base = newest.base)
            order by base
            """,
            connection);
        command.Parameters.AddWithValue("as_of", DateTime.SpecifyKind(DateTime.MaxValue, DateTimeKind.Utc)); // infinity: all that is committed
        var scopes = new List<ReportScope>();
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            scopes.Add(ReportScope.Of(reader.GetString(0)));
        return scopes;
    }

    private static async Task<DueMoment?> FirstDueAsync(
        NpgsqlConnection connection, ReportSchedule schedule, ShippedSlot shipped, DateTimeOffset now, CancellationToken ct)
    {
        if (schedule.IsPaused)
            return null;
        var next = shipped.Slot.NextAfter(now, shipped.TimeZone);
        if (schedule.NextDueTime is not null)
            return next;
        var latest = shipped.Slot.LatestAt(now, shipped.TimeZone);
        await using var command = new NpgsqlCommand(
            "select coalesce(bool_and(period_end_date < @last), false) from reports where base = @base and type_group is null",
            connection);
        command.Parameters.AddWithValue("base", schedule.Scope.Base ?? ReportScope.AllBases);
        command.Parameters.AddWithValue("last", latest.Date.AddDays(-1));
        return (bool)(await command.ExecuteScalarAsync(ct))! ? latest : next;
    }

    private static async Task MoveAsync(NpgsqlConnection connection, ReportSchedule schedule, ShippedSlot shipped, DueMoment? due, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(
            """
            update report_schedules set day_of_week = @day, local_time = @time, time_zone = @zone, next_due_time = @due
            where id = @id and follows_settings
            """,
            connection);
        command.Parameters.AddWithValue("id", schedule.ScheduleId);
        command.Parameters.AddWithValue("day", (int)shipped.Slot.Day);
        command.Parameters.AddWithValue("time", shipped.Slot.Time);
        command.Parameters.AddWithValue("zone", shipped.TimeZone.Id);
        command.Parameters.Add(ScheduleRows.Nullable("due", NpgsqlTypes.NpgsqlDbType.TimestampTz, due?.Time));
        await command.ExecuteNonQueryAsync(ct);
    }
}
