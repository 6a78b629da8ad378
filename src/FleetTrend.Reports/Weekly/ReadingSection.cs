using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>How to read the report: its origin, its words, its methods, its cautions.</summary>
internal static class ReadingSection
{
    public static string Title(ReportInputs inputs) =>
        $"Weekly trend report: {inputs.Scope.Title}, {NumberWords.Period(inputs.Period.Start, inputs.Period.End)}";

    public static IReadOnlyList<KeyValuePair<string, string>> Origin(ReportDraft draft)
    {
        var latestLook = draft.Fleet.Max(l => l.LatestInspectionDate);
        var latestHours = draft.Fleet.Max(l => l.LatestDate);
        return
        [
            new("As of", NumberWords.Moment(draft.Current.AsOf)),
            new("Newest inspection", latestLook is { } look ? NumberWords.Day(look) : "none on record"),
            new("Newest hours", latestHours is { } hours ? NumberWords.Day(hours) : "none on record"),
            new("Compared with", draft.Previous is { } previous ? NumberWords.Moment(previous.AsOf) : "nothing earlier"),
            new("Code version", draft.Current.CodeVersion),
        ];
    }

    // Last of the sections to be composed, when every method has its number.
    public static ReportSection Of(ReportDraft draft)
    {
        var parameters = draft.Current.Parameters;
        List<Line> notes =
        [
            "Interval: what the data leave open. A wide interval says that there is little data, not that things are bad.",
            $"q: of calls as strong as this, the share that would be chance. Flags for drift and for bases are raised up to q = {NumberWords.Rounded(parameters.FalseDiscoveryRate)}, "
                + $"and for drift with at least {parameters.MinimumEventsForDrift} events.",
            $"A location is flagged as coming back from {NumberWords.Count(parameters.RepeatsForFlag, "return", "returns")} after a repair on, by count and without a test.",
            "Hours end at the last look: what was flown since then is in no rate. A failure lies between the last good look and the bad one.",
            "A figure in square brackets names its method in the list below.",
        ];
        List<Block> blocks = [new Block.Bullets(notes)];
        if (draft.Methods.Names.Count > 0)
        {
            blocks.Add(new Block.SubHeading("Methods"));
            blocks.Add(new Block.Bullets([.. draft.Methods.Names.Select((name, i) => (Line)$"[{i + 1}] {name}")]));
        }

        blocks.Add(new Block.Paragraph(
            $"Every number is {draft.AsOf}, by code version {draft.Current.CodeVersion}; the same records and choices give it again.", IsAside: true));
        return new ReportSection("reading", "How to read this", blocks);
    }

    public static ReportSection CautionsSection() =>
        new("cautions", "Cautions", [new Block.Bullets([.. Cautions.Full.Select(c => (Line)c)])]);
}
