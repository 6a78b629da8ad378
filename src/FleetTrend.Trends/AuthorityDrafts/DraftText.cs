using System.Globalization;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Words;

namespace FleetTrend.Trends.AuthorityDrafts;

/// <summary>Writes a draft as plain text. What the records do not tell is a blank with its label.</summary>
internal static class DraftText
{
    private const string Blank = "____________________";

    /// <summary>The draft.</summary>
    public static string Write(DraftFacts facts, IReadOnlyList<ReportingParagraph> paragraphs)
    {
        List<string> lines =
        [
            "DRAFT. It may have to be reported: you judge.",
            "FleetTrend put these facts together from the records. It does not decide whether",
            "they have to be reported, and it sends nothing.",
            .. Heading("Under what it may fall"),
            .. paragraphs.SelectMany(Paragraph),
            "- FAA Form 8010-4, AC 20-109A: a malfunction or defect report, voluntary for part 91",
            "  owners and mechanics.",
            .. Heading("What was found"),
            .. Found(facts),
            .. Heading("Aircraft"),
            .. Aircraft(facts),
            .. Heading("Part"),
            .. Part(facts),
            .. Heading("What was done"),
            .. Done(facts.Found),
            .. Heading("Other pertinent information"),
            Blank,
            .. Heading("Records behind it"),
            .. facts.Found.Evidence.Select(k => string.Create(CultureInfo.InvariantCulture, $"- {k.Source} {k.SourceRecordId}, revision {k.Revision}")),
            $"As known on {NumberWords.Moment(facts.AsOf)}. Notes of the records are left out: they may name persons.",
        ];
        return string.Join('\n', lines) + "\n";
    }

    /// <summary>Why a finding has no draft.</summary>
    public static string WhyNot(LocationEvent found, string? jascCode) =>
        $"No draft: {ConditionWords.Name(found.Condition)} at {found.Location} ({LocationWords.Kind(found.Kind.Title, found.Kind.Name)}, "
        + $"{(jascCode is null ? "no JASC code" : $"JASC {JascTitles.Name(jascCode)}")}) is by its kind none of the conditions that "
        + $"{string.Join("; ", ReportingParagraphs.All.Select(p => p.Citation).Distinct(StringComparer.Ordinal))} may concern there: "
        + $"{string.Join(", ", ReportingParagraphs.ConditionsAt(found.Location, jascCode).Select(ConditionWords.Name))}. "
        + "That does not say that nothing has to be reported: you judge.";

    private static IEnumerable<string> Paragraph(ReportingParagraph paragraph)
    {
        yield return $"- {paragraph.Citation} ({paragraph.Who}):";
        yield return $"  {paragraph.About}.";
        if (paragraph.TimeLimit is { } limit)
            yield return $"  A report under it is due {limit}.";
    }

    private static IEnumerable<string> Found(DraftFacts facts)
    {
        var found = facts.Found;
        yield return Field("Condition", ConditionWords.Name(found.Condition) + Size(found));
        yield return Field("Location", $"{LocationWords.Kind(found.Kind.Title, found.Kind.Name)}, {found.Location}");
        yield return Field("JASC code", facts.JascCode is { } code ? JascTitles.Name(code) : null);
        yield return Field("Found on", NumberWords.Day(found.FoundDate));
        yield return Field("It arose between", found.LastGood is { } good ? $"{NumberWords.HoursInFull(good.Value)} and {NumberWords.HoursInFull(found.Found.Value)} of the aircraft" : null);
        yield return Field("How it was found", null);
        yield return Field("In flight: what happened, damage, fumes", null);
        yield return Field("Apparent cause", null);
    }

    private static IEnumerable<string> Aircraft(DraftFacts facts)
    {
        yield return Field("Registration", facts.Aircraft.Registration);
        yield return Field("Type group in these records", facts.TypeGroup);
        yield return Field("Make, model, serial number", null);
        yield return Field("Time in service when found", NumberWords.HoursInFull(facts.Found.Found.Value));
        yield return Field("Engine make, model, serial number", null);
        yield return Field("Engine time since new, since overhaul", null);
    }

    private static IEnumerable<string> Part(DraftFacts facts)
    {
        yield return Field("Name", LocationWords.Kind(facts.Found.Kind.Title, facts.Found.Kind.Name));
        yield return Field("Part number", facts.Part?.PartNumber);
        yield return Field("Serial number", facts.Part?.SerialNumber);
        yield return Field("Maker", null);
        yield return Field("Time on the part when found", facts.PartHours is { } hours ? NumberWords.HoursInFull(hours) : null);
        yield return Field("Time since overhaul", null);
    }

    private static string[] Heading(string heading) => ["", heading.ToUpperInvariant()];

    private static string Field(string label, string? value) => $"{label}: {value ?? Blank}";

    private static string Size(LocationEvent found) => found.Sizes.Count == 0 ? "" : $", {NumberWords.Rounded(found.Sizes[^1].Millimetres)} mm";

    private static IEnumerable<string> Done(LocationEvent found)
    {
        foreach (var action in found.Actions)
            yield return $"- {FirstLetter.Capital(ActionWords.Done(action.Kind))} on {NumberWords.Day(action.Date)} at {NumberWords.HoursInFull(action.At.Value)}";
        if (found.Actions.Count == 0)
            yield return $"No action is recorded: {Blank}";
        if (found.ClosedDate is null)
            yield return "It is open.";
        else if (found.ClosedBy is null)
            yield return $"A look on {NumberWords.Day(found.ClosedDate.Value)} found the location good.";
    }
}
