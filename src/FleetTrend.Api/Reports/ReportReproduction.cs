using System.Text.Json;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Reports;
using FleetTrend.Trends;

namespace FleetTrend.Api.Reports;

/// <summary>Makes a report again from the records as they were known then, and compares.</summary>
internal sealed class ReportReproduction(TrendRefresh refresh, ResultReader results)
{
    /// <summary>The first difference between a stored report and the same made again; null where there is none.</summary>
    public async Task<string?> FirstDifferenceAsync(StoredReport report, CancellationToken ct)
    {
        var inputs = JsonSerializer.Deserialize<ReportInputs>(report.ParametersJson, TrendJson.Options)
            ?? throw new JsonException($"Report {report.ReportId} has no inputs.");
        if (await ComputeAsync(report.AsOf, report.CodeVersion, ct) is not { } current)
            return $"The parameters of the trends of {report.AsOf:O} are not kept.";
        var previous = inputs.PreviousAsOf is { } moment ? await ComputeAsync(moment, report.CodeVersion, ct) : null;
        if (Compare(report, WeeklyReport.Compose(current, previous, inputs).Render()) is not { } difference)
            return null;
        return report.CodeVersion == TrendRefresh.CodeVersion
            ? difference
            : $"{difference} The report was made by code version {report.CodeVersion}; this is {TrendRefresh.CodeVersion}.";
    }

    /// <summary>Trends from the records, with the parameters that were used then; null where these are not kept.</summary>
    /// <remarks>The version is printed in the report; it is what made the report, and a change of it alone is no difference.</remarks>
    private async Task<TrendSnapshot?> ComputeAsync(DateTimeOffset asOf, string codeVersion, CancellationToken ct) =>
        await results.ParametersAtAsync(asOf, ct) is { } parameters ? await refresh.ComputeAsync(asOf, parameters, codeVersion, ct) : null;

    private static string? Compare(StoredReport report, RenderedReport again)
    {
        if (report.Subject != again.Subject)
            return $"Subject: was \"{report.Subject}\", is \"{again.Subject}\".";
        if (FirstLine(report.Text, again.Text) is { } text)
            return $"Text: {text}";
        if (FirstLine(report.Html, again.Html) is { } html)
            return $"HTML: {html}";
        if (report.DocumentJson is { } document && FirstLine(ReportMessages.WholeText(document), ReportMessages.WholeText(again.DocumentJson)) is { } whole)
            return $"Whole report: {whole}";
        var names = report.Plots.Keys.Union(again.Plots.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal);
        var other = names.FirstOrDefault(name => !report.Plots.TryGetValue(name, out var was)
            || !again.Plots.TryGetValue(name, out var now) || !was.AsSpan().SequenceEqual(now));
        return other is null ? null : $"Plot {other}: its bytes differ.";
    }

    private static string? FirstLine(string was, string now)
    {
        if (was == now)
            return null;
        var (before, after) = (was.Split('\n'), now.Split('\n'));
        var line = before.Zip(after).TakeWhile(pair => pair.First == pair.Second).Count();
        return $"line {line + 1} was \"{before.ElementAtOrDefault(line)}\", is \"{after.ElementAtOrDefault(line)}\".";
    }
}
