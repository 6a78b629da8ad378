using FleetTrend.Records.Schedules;
using FleetTrend.Store.Outbox;
using Npgsql;

namespace FleetTrend.Store.Schedules;

/// <summary>Schedules of reports as people set them.</summary>
public sealed class ScheduleStore(NpgsqlDataSource dataSource, OutboxStore outbox)
{
    /// <summary>All of them: the whole fleet first, then bases, then type groups.</summary>
    public async Task<IReadOnlyList<ReportSchedule>> ListAsync(CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        return await ScheduleRows.ReadAsync(connection, "true", ct);
    }

    /// <summary>The schedule of that name; null where there is none.</summary>
    public async Task<ReportSchedule?> FindAsync(string name, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        return await OfNameAsync(connection, name, ct);
    }

    /// <summary>Adds a schedule, or changes the one of that name. What it has made stays with it.</summary>
    /// <param name="schedule">As it shall be, with when it is next due.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>As stored.</returns>
    public async Task<ReportSchedule> SetAsync(ReportSchedule schedule, bool write, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        var id = (await ScheduleRows.WriteAsync(connection, schedule, mayChange: true, ct))!.Value;
        await ScheduleRows.WriteRecipientsAsync(connection, id, Distinct(schedule.Recipients), ct);
        var stored = (await OfNameAsync(connection, schedule.Name, ct))!;
        if (write)
            await transaction.CommitAsync(ct);
        return stored;
    }

    /// <summary>Removes a schedule; its reports stay.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>False where there is none.</returns>
    public async Task<bool> RemoveAsync(string name, bool write, CancellationToken ct)
    {
        if (!write)
            return await FindAsync(name, ct) is not null;
        await using var command = dataSource.CreateCommand(
            "update report_schedules set remove_time = clock_timestamp() where name = @name and remove_time is null");
        command.Parameters.AddWithValue("name", name);
        return await command.ExecuteNonQueryAsync(ct) > 0;
    }

    /// <summary>Asks a worker to send the report of the last complete period now, to those who have not got it.</summary>
    /// <param name="name">The schedule.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>The schedule; null where there is none.</returns>
    public async Task<ReportSchedule?> AskToSendAsync(string name, bool write, CancellationToken ct)
    {
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using (var command = new NpgsqlCommand(
            "update report_schedules set send_asked_time = clock_timestamp(), retry_time = null where name = @name and remove_time is null", connection))
        {
            command.Parameters.AddWithValue("name", name);
            await command.ExecuteNonQueryAsync(ct);
        }

        var asked = await OfNameAsync(connection, name, ct);
        if (write)
            await transaction.CommitAsync(ct);
        return asked;
    }

    /// <summary>
    /// Sets who gets the report of a scope, over all its schedules: who is not named leaves each of them, and who is in none joins the first. Where
    /// there is no schedule, the shipped one is added.
    /// </summary>
    /// <param name="scope">The whole fleet or a base.</param>
    /// <param name="addresses">Mail addresses; repeats count once.</param>
    /// <param name="shipped">The schedule of that scope as it is shipped.</param>
    /// <param name="write">False to say what would become of it and write nothing.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>Who gets it then.</returns>
    public async Task<IReadOnlyList<string>> SetRecipientsAsync(
        ReportScope scope, IReadOnlyList<string> addresses, ReportSchedule shipped, bool write, CancellationToken ct)
    {
        var wanted = Distinct(addresses);
        await using var connection = await dataSource.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        var schedules = await OfScopeAsync(connection, scope, ct);
        if (schedules.Count == 0 && wanted.Length > 0)
        {
            await ScheduleRows.WriteAsync(connection, shipped, mayChange: false, ct);
            schedules = await OfScopeAsync(connection, scope, ct);
        }

        var newcomers = wanted.Except(schedules.SelectMany(s => s.Recipients), StringComparer.Ordinal).ToList();
        foreach (var (index, schedule) in schedules.OrderBy(s => s.ScheduleId).Index())
        {
            var stay = schedule.Recipients.Intersect(wanted, StringComparer.Ordinal);
            await ScheduleRows.WriteRecipientsAsync(connection, schedule.ScheduleId, [.. index == 0 ? stay.Concat(newcomers) : stay], ct);
        }

        if (write)
            await transaction.CommitAsync(ct);
        return wanted;
    }

    /// <summary>What became of the last report of a schedule on its way to each recipient.</summary>
    public async Task<IReadOnlyList<DeliveryState>> DeliveriesAsync(ReportSchedule schedule, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        if (schedule.LastReportId is not { } reportId)
            return [.. schedule.Recipients.Select(address => new DeliveryState(address, null, WasOwed: false))];
        var mails = (await outbox.OfReportAsync(reportId, ct)).ToDictionary(mail => mail.Recipient, StringComparer.OrdinalIgnoreCase);
        var owed = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        await using var command = dataSource.CreateCommand("select recipient from report_deliveries where report_id = @id");
        command.Parameters.AddWithValue("id", reportId);
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            owed.Add(reader.GetString(0));
        return [.. schedule.Recipients.Select(address => new DeliveryState(address, mails.GetValueOrDefault(address), owed.Contains(address)))];
    }

    private static string[] Distinct(IEnumerable<string> addresses) => [.. addresses.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    private static async Task<ReportSchedule?> OfNameAsync(NpgsqlConnection connection, string name, CancellationToken ct) =>
        (await ScheduleRows.ReadAsync(connection, "name = @name", ct, ("name", name))).SingleOrDefault();

    private static async Task<List<ReportSchedule>> OfScopeAsync(NpgsqlConnection connection, ReportScope scope, CancellationToken ct) =>
        await ScheduleRows.ReadAsync(
            connection, "base = @base and coalesce(type_group, '') = @type_group", ct,
            ("base", scope.Base ?? ReportScope.AllBases), ("type_group", scope.TypeGroup ?? ""));
}
