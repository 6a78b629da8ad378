using System.Text.Json;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Records.Flags;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store;
using FleetTrend.Store.Codes;
using FleetTrend.Store.DataProblems;
using FleetTrend.Store.Flags;
using FleetTrend.Store.HeldRecords;
using FleetTrend.Store.Recipients;
using FleetTrend.Store.Reports;
using FleetTrend.Trends;
using FleetTrend.Trends.Silence;

namespace FleetTrend.Worker.Reports;

/// <summary>Makes the reports of a period: one per base and one of the whole fleet, each saved once together with its mails.</summary>
public sealed class ReportWriter(
    TrendRefresh refresh,
    ResultReader results,
    FlagStore flags,
    DataProblemStore checks,
    HeldRecordStore held,
    CodeStore codes,
    ReportStore reports,
    RecipientStore recipients,
    SilentSourceReader silentSources,
    HostSettings settings,
    TimeProvider time,
    ILogger<ReportWriter> log)
{
    /// <summary>Name of the whole fleet where a base is asked for.</summary>
    public const string WholeFleet = "*";

    private const int MostPerPage = 500;

    /// <summary>Makes the reports of a period that are not there yet, all as of one moment.</summary>
    public async Task WriteAsync(ReportPeriod period, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(period);
        var asOf = await refresh.RunAsync(ct);
        var published = await results.AtAsync(asOf, ct) ?? throw new InvalidOperationException($"Trends of {asOf:O} are not kept.");
        var current = await results.AssembleAsync(published, ct);
        var earlier = new Dictionary<DateTimeOffset, TrendSnapshot>();
        var open = await AllAsync(token => flags.ListAsync(state: null, registration: null, MostPerPage, token, ct));
        var records = await RecordsAsync(current.AsOf, ct);
        var bases = current.Fleet.Where(l => l.RetiredDate is null).Select(l => l.Base).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
        foreach (var name in bases.Append(WholeFleet))
        {
            await WriteAsync(name, period, current, earlier, open, records, ct);
        }
    }

    private async Task WriteAsync(
        string name, ReportPeriod period, TrendSnapshot current, Dictionary<DateTimeOffset, TrendSnapshot> earlier,
        IReadOnlyList<StoredFlag> open, RecordState records, CancellationToken ct)
    {
        var before = await reports.LatestAsync(name, ct);
        if (before is not null && before.PeriodStart == period.Start && before.PeriodEnd == period.End)
        {
            return;
        }

        var inputs = new ReportInputs
        {
            Scope = name == WholeFleet ? ReportScope.WholeFleet : new ReportScope(name),
            Period = period,
            PreviousAsOf = before?.AsOf,
            Flags = [.. open.Select(f => Line(f, before?.AsOf))],
            DataProblems = records.Checks,
            Held = records.Held,
            SilentSources = records.Silent,
            PagesUrl = new Uri(settings.PublicUrl),
            Notice = settings.Notice,
        };
        var rendered = WeeklyReport.Compose(current, await EarlierAsync(before?.AsOf, earlier, ct), inputs).Render();
        var saved = await reports.SaveAsync(
            new StoredReport
            {
                Base = name,
                PeriodStart = period.Start,
                PeriodEnd = period.End,
                AsOf = current.AsOf,
                CodeVersion = current.CodeVersion,
                ParametersJson = JsonSerializer.Serialize(inputs, TrendJson.Options),
                Subject = rendered.Subject,
                Text = rendered.Text,
                Html = rendered.Html,
                DocumentJson = rendered.DocumentJson,
                Plots = rendered.Plots,
                MessageIdSeed = $"{name}/{period.Start:O}/{period.End:O}",
            },
            await recipients.ReadAsync(name, ct),
            ct);
        if (saved.IsNew)
        {
            WorkerLog.ReportWritten(log, name, period.Start, period.End, rendered.Subject, (time.GetUtcNow() - current.AsOf).TotalSeconds);
        }
    }

    /// <summary>The trends that the report before showed: computed again where they are not kept whole any more, once for all bases.</summary>
    private async Task<TrendSnapshot?> EarlierAsync(
        DateTimeOffset? asOf, Dictionary<DateTimeOffset, TrendSnapshot> earlier, CancellationToken ct)
    {
        if (asOf is not { } moment)
            return null;
        if (!earlier.TryGetValue(moment, out var trends))
        {
            trends = await results.AtAsync(moment, ct) is { } kept
                ? await results.AssembleAsync(kept, ct)
                : await refresh.ComputeAsync(moment, await refresh.ParametersAsync(moment, ct), TrendRefresh.CodeVersion, ct);
            earlier.Add(moment, trends);
        }

        return trends;
    }

    /// <summary>What of the records does not add up or waits, as the refresh of that moment has left it.</summary>
    private async Task<RecordState> RecordsAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        var present = await checks.ListPresentAsync(ct);
        var waiting = await held.CountAsync(asOf, ct);
        var unmapped = waiting.Count == 0 ? [] : await AllAsync(token => codes.ListUnmappedAsync(source: null, MostPerPage, token, ct));
        return new RecordState(
            [
                .. present.Select(check => new DataProblemLine
                {
                    Identity = check.Found.Identity,
                    SinceDate = DateOnly.FromDateTime(check.SinceTime.UtcDateTime),
                    ClosedBy = check.ClosedBy,
                }),
            ],
            waiting.Count == 0 ? null : new HeldLine
            {
                ByRegistration = new SortedDictionary<string, int>(waiting.ToDictionary(), StringComparer.Ordinal),
                UnmappedCodes = unmapped.Count,
            },
            await silentSources.ReadAsync(asOf, ct));
    }

    private static async Task<IReadOnlyList<T>> AllAsync<T>(Func<string?, Task<Page<T>>> list)
    {
        var all = new List<T>();
        string? next = null;
        do
        {
            var page = await list(next);
            all.AddRange(page.Items);
            next = page.NextPageToken;
        }
        while (next is not null);
        return all;
    }

    private static FlagLine Line(StoredFlag flag, DateTimeOffset? before) => new()
    {
        Flag = flag.Said(),
        State = flag.State is FlagState.Acknowledged or FlagState.ActedOn ? FlagLineState.Acknowledged
            : before is null || flag.RaiseTime > before ? FlagLineState.New
            : FlagLineState.Open,
        RaisedDate = DateOnly.FromDateTime(flag.RaiseTime.UtcDateTime),
        AcknowledgedBy = flag.AnsweredBy,
        AcknowledgedDate = flag.AnswerTime is { } answered ? DateOnly.FromDateTime(answered.UtcDateTime) : null,
        Note = flag.Answer,
    };

    private sealed record RecordState(IReadOnlyList<DataProblemLine> Checks, HeldLine? Held, IReadOnlyList<SilentSource> Silent);
}
