using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>What the data cannot tell yet, and what they can still say.</summary>
internal static class TooLittleSection
{
    private const int MostRows = 8;

    public static ReportSection? Compose(ReportDraft draft)
    {
        List<Line> items =
        [
            .. draft.Current.PartLives
                .Where(t => t is { Fits.Count: 0, Base: null, BasesDiffer: false } && draft.HasTypeGroup(t.TypeGroup))
                .Take(MostRows)
                .Select(t => Line.Join(
                    $"Life of the {LocationWords.Kind(t.KindTitle, t.Kind)}, {t.TypeGroup}: {t.NotEnoughData ?? "no fit"}. Failures per hours on the part: ",
                    draft.Number(t.FailureRate, FigureStyle.AsIs), ".")),
            .. draft.Current.Rates
                .Where(r => r.Kind is not null && r.Location is null && r.Condition == Condition.Crack && r.Rate.Events == 0 && draft.HasTypeGroup(r.TypeGroup))
                .Take(MostRows)
                .Select(r => Line.Join(
                    $"Cracks at {LocationWords.Kind(r.KindTitle, r.Kind!)}, {r.TypeGroup}: none seen, which is no proof that there are none: ",
                    draft.Number(r.Rate, FigureStyle.AsIs), ".")),
        ];
        return items.Count == 0 ? null : new ReportSection("too-little", "Not enough data yet", [new Block.Bullets(items)]);
    }
}
