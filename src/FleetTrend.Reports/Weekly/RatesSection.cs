using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.Rates;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>How often cracks arise, per kind of place. It is of the whole type group, whatever the scope.</summary>
internal static class RatesSection
{
    private const int MostRows = 10;

    public static ReportSection? Compose(ReportDraft draft)
    {
        var rates = draft.Current.Rates
            .Where(r => r.Kind is not null && r.Location is null && draft.HasTypeGroup(r.TypeGroup))
            .Where(r => r.Condition == Condition.Crack && r.Rate.Events > 0)
            .OrderByDescending(r => r.Rate.Value ?? 0).ThenBy(r => r.TypeGroup, StringComparer.Ordinal).ThenBy(r => r.Kind, StringComparer.Ordinal)
            .ToList();
        if (rates.Count == 0) return null;
        List<Block> blocks =
        [
            new Block.Table(
                $"Cracks by kind of place, all bases, {draft.AsOf}",
                [new("Kind of place"), new("Type group"), new("Rate", true), new("Came back", true)],
                [.. rates.Take(MostRows).Select(r => Row(draft, r))]),
        ];
        var atEntry = rates.Sum(r => r.PresentAtEntryCount);
        if (atEntry > 0)
        {
            blocks.Add(new Block.Paragraph(
                $"{NumberWords.Count(atEntry, "crack was", "cracks were")} already there at the first look: listed, and in no rate.", IsAside: true));
        }

        var notWatched = rates.Sum(r => r.NotWatchedCount);
        if (notWatched > 0)
        {
            blocks.Add(new Block.Paragraph(
                $"{NumberWords.Count(notWatched, "crack was", "cracks were")} found in no watched hours, such as on the day a part went in: "
                + "listed, and in no rate.", IsAside: true));
        }

        return new ReportSection("rates", "How often cracks arise", blocks);
    }

    private static IReadOnlyList<Line> Row(ReportDraft draft, RateTrend rate) =>
    [
        LocationWords.Kind(rate.KindTitle, rate.Kind!),
        rate.TypeGroup,
        draft.Cell(rate.Rate, FigureStyle.AsIs),
        $"{rate.RepeatCount} of {rate.Rate.Events}",
    ];
}
