using System.Security.Cryptography;
using System.Text;
using FleetTrend.Store.Mapping;
using Microsoft.EntityFrameworkCore;

namespace FleetTrend.Store.Reports;

/// <summary>The archive of reports. A report is saved once, together with the mails that it owes, and never changed.</summary>
public sealed class ReportStore(IDbContextFactory<FleetDbContext> contexts)
{
    /// <summary>Saves a report and one mail per recipient in one transaction. Where the base and period have a report it stays,
    /// and no mail is added.</summary>
    public async Task<SavedReport> SaveAsync(StoredReport report, IReadOnlyList<string> recipients, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        await using var transaction = await context.Database.BeginTransactionAsync(ct);
        var added = await context.Database.ExecuteSqlAsync(
            $"""
            insert into reports (base, period_start_date, period_end_date, as_of, code_version, parameters_json,
                                 subject, text, html, document_json, message_id_seed)
            values ({report.Base}, {report.PeriodStart}, {report.PeriodEnd}, {report.AsOf.ToUniversalTime()}, {report.CodeVersion},
                    {report.ParametersJson}::json, {report.Subject}, {report.Text}, {report.Html},
                    {report.DocumentJson}::json, {report.MessageIdSeed})
            on conflict (base, period_start_date, period_end_date) do nothing
            """,
            ct);
        var id = await context.Reports
            .Where(row => row.Base == report.Base && row.PeriodStartDate == report.PeriodStart && row.PeriodEndDate == report.PeriodEnd)
            .Select(row => row.Id)
            .SingleAsync(ct);
        if (added == 0)
            return new SavedReport(id, IsNew: false);

        foreach (var (name, image) in report.Plots)
            context.Add(new ReportPlotRow { ReportId = id, Name = name, Image = image });
        await context.SaveChangesAsync(ct);
        var to = recipients.Distinct(StringComparer.Ordinal).ToArray();
        var messageIds = to.Select(recipient => MessageId(report.MessageIdSeed, recipient)).ToArray();
        await context.Database.ExecuteSqlAsync(
            $"""
            insert into outbox_mails (report_id, recipient, message_id, attempt_count, next_attempt_time)
            select {id}, mail.recipient, mail.message_id, 0, clock_timestamp()
            from unnest({to}, {messageIds}) mail(recipient, message_id)
            """,
            ct);
        await transaction.CommitAsync(ct);
        return new SavedReport(id, IsNew: true);
    }

    /// <summary>The report, or null.</summary>
    public Task<StoredReport?> GetAsync(long reportId, CancellationToken ct) =>
        FirstAsync(rows => rows.Where(row => row.Id == reportId), ct);

    /// <summary>The report of the latest period of a base, or null.</summary>
    public Task<StoredReport?> LatestAsync(string @base, CancellationToken ct) =>
        FirstAsync(rows => rows.Where(row => row.Base == @base).OrderByDescending(row => row.PeriodEndDate).ThenByDescending(row => row.Id), ct);

    /// <summary>Reports, newest first; of all bases where <paramref name="base"/> is null.</summary>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<ReportSummary>> ListAsync(string? @base, int pageSize, string? pageToken, CancellationToken ct)
    {
        var before = PageToken.ReadId(pageToken) ?? long.MaxValue;
        await using var context = await contexts.CreateDbContextAsync(ct);
        var reports = await context.Reports
            .Where(row => row.Id < before && (@base == null || row.Base == @base))
            .OrderByDescending(row => row.Id)
            .Take(pageSize + 1)
            .Select(row => new ReportSummary(
                row.Id, row.Base, row.PeriodStartDate, row.PeriodEndDate, row.AsOf, row.CodeVersion, row.Subject))
            .ToListAsync(ct);
        return PageToken.Cut(reports, pageSize, report => PageToken.Write(report.ReportId));
    }

    private async Task<StoredReport?> FirstAsync(Func<IQueryable<ReportRow>, IQueryable<ReportRow>> choose, CancellationToken ct)
    {
        await using var context = await contexts.CreateDbContextAsync(ct);
        var row = await choose(context.Reports.AsNoTracking().Include(report => report.Plots)).FirstOrDefaultAsync(ct);
        return row is null ? null : new StoredReport
        {
            ReportId = row.Id,
            Base = row.Base,
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
