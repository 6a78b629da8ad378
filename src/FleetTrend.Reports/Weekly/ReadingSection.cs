using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.Words;

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
    public static ReportSection Compose(ReportDraft draft)
    {
        var parameters = draft.Current.Parameters;
        List<Line> notes =
        [
            "Interval: the range that fits the data. A wide one says that there is little data, not that things are bad.",
            "Times the norm: found over what the rates or lives of the others give in the same looks, drawn towards 1 where findings are few.",
            "Flag, watch: an aircraft, or the aircraft of a base, has more findings lately than before, allowing for the hours, for what the others had at the "
                + "same locations and for how much aircraft differ; an aircraft that always ran high is none. Limits come from simulating the fleet at its own "
                + $"looks with nothing changing: chance alone raises {NumberWords.Rounded(parameters.FlagsPer50AircraftYears)} flags and {NumberWords.Rounded(parameters.WatchesPer50AircraftYears)} watches per 50 "
                + "aircraft-years, however often one looks. A flag that was raised stays until somebody closes it.",
            "Base: lives of a kind of part against those at the other bases of the type group, called up to q = "
                + $"{NumberWords.Rounded(parameters.FalseDiscoveryRate)} over all bases and kinds of part.",
            $"q: of calls this strong or stronger, the share that are false alarms (Benjamini and Hochberg 1995), {ChanceWords.OneRate}; where they do not, more are. Chances of counts are exact and told down to 1 in 10,000, those of lives are approximate and told down to 1 in 1,000.",
            "Dispersion of a rate: variance over mean of the aircraft's counts. Near 1 they have one rate; above it they differ, and the interval allows for that.",
            "Hours end at the last look: what was flown since then is in no rate. A failure lies between the last good look and the bad one.",
            "A figure in square brackets names its method in the list below.",
        ];
        List<Block> blocks = [new Block.Bullets(notes)];
        blocks.AddRange(draft.MethodBlocks());

        blocks.Add(new Block.Paragraph(
            $"Every number is {draft.AsOf}, by code version {draft.Current.CodeVersion}; the same records and choices give it again.", IsAside: true));
        return new ReportSection("reading", "How to read this", blocks);
    }

    public static ReportSection CautionsSection() =>
        new("cautions", "Cautions", [new Block.Bullets([.. Cautions.Full.Select(c => (Line)c)])]);
}
