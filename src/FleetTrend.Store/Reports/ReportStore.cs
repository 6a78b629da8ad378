using System.Security.Cryptography;
using System.Text;
using FleetTrend.Records.Schedules;
using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Reports;

/// <summary>The archive of reports. A report is saved once, together with the mails that it owes, and never changed.</summary>
public sealed class ReportStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>
    /// Saves a report and owes it to each recipient, in one transaction. Where its base, type group and period have a report, that stays, and is owed
    /// to those who have not been owed it before.
    /// </summary>
    public async Task<SavedReport> SaveAsync(StoredReport report, IReadOnlyList<string> recipients, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        var added = await context.Database.ExecuteSqlAsync(
            $"""
            insert into reports (base, type_group, period_start_date, period_end_date, as_of, code_version, parameters_json,
                                 subject, text, html, document_json, message_id_seed)
            values ({report.Base}, {report.TypeGroup}, {report.PeriodStart}, {report.PeriodEnd}, {report.AsOf.ToUniversalTime()}, {report.CodeVersion},
                    {report.ParametersJson}::json, {report.Subject}, {report.Text}, {report.Html},
                    {report.DocumentJson}::json, {report.MessageIdSeed})
            on conflict (base, type_group, period_start_date, period_end_date) do nothing
            """,
            ct);
        var id = await context.Reports
            .Where(row => row.Base == report.Base && row.TypeGroup == report.TypeGroup
                && row.PeriodStartDate == report.PeriodStart && row.PeriodEndDate == report.PeriodEnd)
            .Select(row => row.Id)
            .SingleAsync(ct);
        if (added > 0)
        {
            foreach (var (name, image) in report.Plots)
                context.Add(new ReportPlotRow { ReportId = id, Name = name, Image = image });
            await context.SaveChangesAsync(ct);
        }

        await OweAsync(context, id, report.MessageIdSeed, recipients, ct);
        await transaction.CommitAsync(ct);
        return new SavedReport(id, IsNew: added > 0);
    }

    /// <summary>Owes a stored report to those of the recipients who have not been owed it before; others get no second mail.</summary>
    public async Task OweAsync(long reportId, IReadOnlyList<string> recipients, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var seed = await context.Reports.Where(row => row.Id == reportId).Select(row => row.MessageIdSeed).SingleAsync(ct);
        await OweAsync(context, reportId, seed, recipients, ct);
    }

    /// <summary>The report, or null.</summary>
    public Task<StoredReport?> GetAsync(long reportId, CancellationToken ct) =>
        FirstAsync(rows => rows.Where(row => row.Id == reportId), ct);

    /// <summary>The report of the latest period of a scope, or null.</summary>
    public Task<StoredReport?> LatestAsync(ReportScope scope, CancellationToken ct) =>
        FirstAsync(rows => Of(rows, scope).OrderByDescending(row => row.PeriodEndDate).ThenByDescending(row => row.Id), ct);

    /// <summary>The identifier of the report of a scope and period, or null.</summary>
    public async Task<long?> FindAsync(ReportScope scope, DateOnly periodStart, DateOnly periodEnd, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await Of(context.Reports, scope)
            .Where(row => row.PeriodStartDate == periodStart && row.PeriodEndDate == periodEnd).Select(row => (long?)row.Id).SingleOrDefaultAsync(ct);
    }

    /// <summary>
    /// The moment of knowledge of the report with which one of a period is compared: the newest of its scope whose period shares no day with it, so
    /// that what is new is new to those who get a report every week; else the newest there is. Null where there is none.
    /// </summary>
    public async Task<DateTimeOffset?> AsOfBeforeAsync(ReportScope scope, DateOnly periodStart, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        return await Of(context.Reports, scope)
            .OrderByDescending(row => row.PeriodEndDate < periodStart).ThenByDescending(row => row.PeriodEndDate).ThenByDescending(row => row.Id)
            .Select(row => (DateTimeOffset?)row.AsOf).FirstOrDefaultAsync(ct);
    }

    /// <summary>Reports, newest first; of every scope where <paramref name="scope"/> is null.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<ReportSummary>> ListAsync(ReportScope? scope, int pageSize, string? pageToken, CancellationToken ct)
    {
        var before = PageToken.ReadId(pageToken) ?? long.MaxValue;
        await using var context = await contexts.CreateDbContextAsync(ct);
        var reports = await (scope is null ? context.Reports : Of(context.Reports, scope))
            .Where(row => row.Id < before)
            .OrderByDescending(row => row.Id)
            .Take(pageSize + 1)
            .Select(row => new ReportSummary(
                row.Id, row.Base, row.PeriodStartDate, row.PeriodEndDate, row.AsOf, row.CodeVersion, row.Subject, row.TypeGroup))
            .ToListAsync(ct);
        return PageToken.Cut(reports, pageSize, report => PageToken.Write(report.ReportId));
    }

    private static IQueryable<ReportRow> Of(IQueryable<ReportRow> rows, ReportScope scope)
    {
        ArgumentNullException.ThrowIfNull(scope);
        var home = scope.Base ?? ReportScope.AllBases;
        return rows.Where(row => row.Base == home && row.TypeGroup == scope.TypeGroup);
    }

    // What was owed once is never owed again: the delivery stays when its mail is removed as old.
    private static async Task OweAsync(FleetDbContext context, long reportId, string seed, IReadOnlyList<string> recipients, CancellationToken ct)
    {
        var to = recipients.Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        var keys = to.Select(recipient => recipient.ToLowerInvariant()).ToArray();
        var messageIds = to.Select(recipient => MessageId(seed, recipient)).ToArray();
        await context.Database.ExecuteSqlAsync(
            $"""
            with owed as (
                insert into report_deliveries (report_id, recipient) select {reportId}, unnest({keys}) on conflict do nothing returning recipient)
            insert into outbox_mails (report_id, recipient, message_id, attempt_count, next_attempt_time)
            select {reportId}, mail.recipient, mail.message_id, 0, clock_timestamp()
            from unnest({to}, {keys}, {messageIds}) mail(recipient, key, message_id)
            join owed on owed.recipient = mail.key
            """,
            ct);
    }

    private async Task<StoredReport?> FirstAsync(Func<IQueryable<ReportRow>, IQueryable<ReportRow>> choose, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var row = await choose(context.Reports.AsNoTracking().Include(report => report.Plots)).FirstOrDefaultAsync(ct);
        return row is null ? null : new StoredReport
        {
            ReportId = row.Id,
            Base = row.Base,
            TypeGroup = row.TypeGroup,
            PeriodStart = row.PeriodStartDate,
            PeriodEnd = row.PeriodEndDate,
            AsOf = row.AsOf,
            CodeVersion = row.CodeVersion,
            ParametersJson = row.ParametersJson,
            Subject = row.Subject,
            Text = row.Text,
            Html = row.Html,
            DocumentJson = row.DocumentJson,
            Plots = row.Plots.ToDictionary(plot => plot.Name, plot => plot.Image, StringComparer.Ordinal),
            MessageIdSeed = row.MessageIdSeed,
        };
    }

    /// <summary>The same report to the same recipient has the same Message-ID at every attempt: a mail server can drop a repeat.</summary>
    private static string MessageId(string seed, string recipient) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(seed + "\n" + recipient)).AsSpan(0, 16)) + "@fleettrend.invalid";
}
