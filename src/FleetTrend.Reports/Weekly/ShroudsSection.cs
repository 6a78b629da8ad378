using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Shrouds;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Stop-drilled shrouds and clamp bolts by the state of their hex: the few that stand out in a report, all of them on a page.</summary>
public static class ShroudsSection
{
    private const int MostLines = 3;
    private const int MostRows = 35;

    // Fewer stop drills in one shroud are no news in a report.
    private const int ManyStopDrills = 3;
    private const string Heading = "Shroud and bolts";

    /// <summary>All type groups of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        if (snapshot.Shrouds.Count == 0)
            return new ReportSection("shrouds", Heading, [new Block.Paragraph($"No stop drill of a heat shroud is recorded, and no layout has a clamp bolt, {asOf}.")]);
        List<Block> blocks = [new Block.Paragraph(ShroudWords.Meaning)];
        foreach (var trend in snapshot.Shrouds)
        {
            blocks.Add(new Block.SubHeading(trend.TypeGroup));
            blocks.Add(new Block.Paragraph(ShroudWords.Shrouds(trend)));
            if (trend.Renewed > 0)
                blocks.Add(HoursToRenewal(trend, asOf));
            if (trend.Bolts.Count == 0)
                continue;
            blocks.Add(new Block.Paragraph($"{ShroudWords.Bolts(trend)}."));
            blocks.Add(new Block.Table(
                $"Clamp bolts by the state of their hex, {asOf}",
                [new("State"), new("Bolts", true), new("Aircraft", true), new("Mean hours in service", true)],
                [.. trend.Bolts.Select(b => (Line[])
                [
                    FirstLetter.Capital(ShroudWords.Name(b.State)), NumberWords.Count(b.Bolts), NumberWords.Count(b.Aircraft),
                    b.MeanAgeHours is { } age ? NumberWords.HoursBare(age) : "not known",
                ])]));
        }

        AddDrilled(blocks, [.. snapshot.Shrouds.SelectMany(t => t.StopDrilled).OrderByDescending(s => s.StopDrills).ThenByDescending(s => s.Hours)], asOf);
        AddBolts(blocks, [.. snapshot.Shrouds.SelectMany(t => t.BadBolts).OrderByDescending(b => b.State).ThenByDescending(b => b.HoursSince)], asOf);
        var methods = snapshot.Shrouds.SelectMany(t => t.Shares).Select(s => s.Share.Method).Distinct(StringComparer.Ordinal);
        blocks.Add(new Block.Paragraph($"How the hours to renewal are worked out: {string.Join("; ", methods)}.", IsAside: true));
        return new ReportSection("shrouds", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        List<StopDrilledShroud> drilled = [.. draft.Current.Shrouds.SelectMany(t => t.StopDrilled)
            .Where(s => s.StopDrills >= ManyStopDrills && draft.Scope.Covers(s.Base)).OrderByDescending(s => s.StopDrills)];
        var bolts = draft.Current.Shrouds.SelectMany(t => t.BadBolts).Count(b => draft.Scope.Covers(b.Base));
        if (drilled.Count == 0 && bolts == 0)
            return null;
        List<Line> lines = [.. drilled.Take(MostLines).Select(s => (Line)$"{ShroudWords.Statement(s)}.")];
        if (bolts > 0)
            lines.Add($"{NumberWords.Count(bolts, "clamp bolt has", "clamp bolts have")} something open: renew while a wrench still fits.");
        List<Block> blocks = [new Block.Bullets(lines)];
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link("Each of them, and the hours to renewal", new Uri(pages, "shrouds"))), IsAside: true));
        return new ReportSection("shrouds", Heading, blocks);
    }

    private static Block.Table HoursToRenewal(ShroudTrend trend, string asOf) => new(
        $"Shrouds renewed by so many flight hours after their first stop drill, {asOf}",
        [new("Flight hours"), new("Renewed by then", true), new("In service so long", true), new("Share renewed", true)],
        [.. trend.Shares.Select(s => (Line[])
        [
            NumberWords.Hours(s.Hours), NumberWords.Count(s.Renewed), NumberWords.Count(s.InService), FigureWords.Format(s.Share, FigureStyle.Chance).Estimate,
        ])]);

    private static void AddDrilled(List<Block> blocks, List<StopDrilledShroud> drilled, string asOf)
    {
        blocks.Add(new Block.SubHeading("Shrouds in service with stop drills"));
        if (drilled.Count == 0)
        {
            blocks.Add(new Block.Paragraph("None."));
            return;
        }

        blocks.Add(new Block.Table(
            $"Most stop drills first, {asOf}",
            [new("Aircraft"), new("Shroud"), new("Stop drills", true), new("First one"), new("Hours since", true), new("Cracks open", true)],
            [.. drilled.Take(MostRows).Select(s => (Line[])
            [
                AircraftLink.OnPage(s.Registration), FirstLetter.Capital(LocationWords.Name(s.Shroud)), NumberWords.Count(s.StopDrills),
                NumberWords.Day(s.FirstDate), NumberWords.HoursBare(s.Hours), NumberWords.Count(s.OpenCracks),
            ])]));
        AddRest(blocks, drilled.Count);
    }

    private static void AddBolts(List<Block> blocks, List<BadBolt> bolts, string asOf)
    {
        if (bolts.Count == 0)
            return;
        blocks.Add(new Block.SubHeading("Clamp bolts with something open"));
        blocks.Add(new Block.Table(
            $"Least left for a wrench first, {asOf}",
            [new("Aircraft"), new("Location"), new("State"), new("Found"), new("Hours since", true), new("Hours in service", true)],
            [.. bolts.Take(MostRows).Select(b => (Line[])
            [
                AircraftLink.OnPage(b.Registration), FirstLetter.Capital(LocationWords.Name(b.Location)), FirstLetter.Capital(ShroudWords.Name(b.State)),
                NumberWords.Day(b.FoundDate), NumberWords.HoursBare(b.HoursSince), b.AgeHours is { } age ? NumberWords.HoursBare(age) : "not known",
            ])]));
        AddRest(blocks, bolts.Count);
    }

    private static void AddRest(List<Block> blocks, int count)
    {
        if (count > MostRows)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(count - MostRows)} more. ListShrouds has all of them.", IsAside: true));
    }
}
