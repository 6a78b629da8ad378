using System.Text.Json;
using FleetTrend.Records.Flags;
using FleetTrend.Records.Schedules;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store;
using FleetTrend.Store.Codes;
using FleetTrend.Store.DataProblems;
using FleetTrend.Store.Flags;
using FleetTrend.Store.HeldRecords;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Results.Reporting;

/// <summary>Puts a report together from what is stored, to be saved and mailed or to be looked at beforehand. It stores nothing.</summary>
public sealed class ReportComposer(
    TrendRefresh refresh,
    ResultReader results,
    FlagStore flags,
    DataProblemStore checks,
    HeldRecordStore held,
    CodeStore codes,
    ReportStore reports,
    SilentSourceReader silentSources)
{
    private const int MostPerPage = 500;

    /// <summary>What the reports of a published moment are put together from.</summary>
    public async Task<ReportMaterial> ReadAsync(PublishedTrends published, CancellationToken ct)
    {
        var current = await results.AssembleAsync(published, ct);
        var present = await checks.ListPresentAsync(ct);
        var waiting = await held.CountAsync(current.AsOf, ct);
        var unmapped = waiting.Count == 0 ? [] : await AllAsync(token => codes.ListUnmappedAsync(source: null, MostPerPage, token, ct));
        return new ReportMaterial
        {
            Current = current,
            Flags = await AllAsync(token => flags.ListAsync(state: null, registration: null, MostPerPage, token, ct)),
            DataProblems =
            [
                .. present.Select(check => new DataProblemLine
                {
                    Identity = check.Found.Identity,
                    SinceDate = DateOnly.FromDateTime(check.SinceTime.UtcDateTime),
                    ClosedBy = check.ClosedBy,
                }),
            ],
            Held = waiting.Count == 0 ? null : new HeldLine
            {
                ByRegistration = new SortedDictionary<string, int>(waiting.ToDictionary(), StringComparer.Ordinal),
                UnmappedCodes = unmapped.Count,
            },
            SilentSources = await silentSources.ReadAsync(current.AsOf, ct),
        };
    }

    /// <summary>Puts one together.</summary>
    /// <param name="material">The moment.</param>
    /// <param name="scope">What it is about.</param>
    /// <param name="period">The days that it covers.</param>
    /// <param name="pages">Where the pages are.</param>
    /// <param name="notice">A line that stands first; null for none.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<ComposedReport> ComposeAsync(
        ReportMaterial material, ReportScope scope, ReportPeriod period, Uri pages, string? notice, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(material);
        ArgumentNullException.ThrowIfNull(scope);
        ArgumentNullException.ThrowIfNull(period);
        var before = await reports.AsOfBeforeAsync(scope, period.Start, ct);
        var inputs = new ReportInputs
        {
            Scope = scope,
            Period = period,
            PreviousAsOf = before,
            Flags = [.. material.Flags.Select(f => Line(f, before))],
            DataProblems = material.DataProblems,
            Held = material.Held,
            SilentSources = material.SilentSources,
            PagesUrl = pages,
            Notice = notice,
        };
        var rendered = WeeklyReport.Compose(material.Current, await EarlierAsync(before, material, ct), inputs).Render();
        var home = scope.Base ?? ReportScope.AllBases;
        return new ComposedReport(rendered, new StoredReport
        {
            Base = home,
            TypeGroup = scope.TypeGroup,
            PeriodStart = period.Start,
            PeriodEnd = period.End,
            AsOf = material.Current.AsOf,
            CodeVersion = material.Current.CodeVersion,
            ParametersJson = JsonSerializer.Serialize(inputs, TrendJson.Options),
            Subject = rendered.Subject,
            Text = rendered.Text,
            Html = rendered.Html,
            DocumentJson = rendered.DocumentJson,
            Plots = rendered.Plots,
            MessageIdSeed = $"{home}/{(scope.TypeGroup is { } typeGroup ? $"\n{typeGroup}/" : "")}{period.Start:O}/{period.End:O}",
        });
    }

    /// <summary>The trends that the report before showed: computed again where they are not kept whole any more, once for all scopes.</summary>
    private async Task<TrendSnapshot?> EarlierAsync(DateTimeOffset? asOf, ReportMaterial material, CancellationToken ct)
    {
        if (asOf is not { } moment)
            return null;
        if (!material.Earlier.TryGetValue(moment, out var trends))
        {
            trends = await results.AtAsync(moment, ct) is { } kept
                ? await results.AssembleAsync(kept, ct)
                : await refresh.ComputeAsync(moment, await refresh.ParametersAsync(moment, ct), TrendRefresh.CodeVersion, ct);
            material.Earlier.Add(moment, trends);
        }

        return trends;
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
}
