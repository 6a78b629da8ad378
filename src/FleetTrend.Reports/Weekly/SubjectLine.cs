using FleetTrend.Records.Flags;
using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>The subject of the mail: the news itself, in one line.</summary>
internal static class SubjectLine
{
    private const int MostCharacters = 140;

    /// <summary>The subject of a report.</summary>
    public static string Compose(ReportDraft draft, int newProblems)
    {
        var flags = draft.Flags.Where(f => f.Flag.Tier == FlagTier.Flag).ToList();
        var fresh = flags.Where(f => f.State == FlagLineState.New).ToList();
        var open = flags.Count - fresh.Count;
        var at = draft.Scope switch
        {
            { Base: { } home } => $" at {home}",
            { TypeGroup: { } typeGroup } => $", {typeGroup}",
            _ => ", whole fleet",
        };
        var news = fresh.Count > 0
            ? $"{NumberWords.Count(fresh.Count, "new flag", "new flags")}{at}: {Headlines(fresh)}"
            : Quiet(draft, at, open, newProblems);
        return OneLine(news);
    }

    private static string Quiet(ReportDraft draft, string at, int open, int newProblems)
    {
        if (draft.Fleet.Count == 0) return $"No aircraft on record{at}";
        if (draft.Silences.Count(s => !s.HoursStillCome) == draft.Fleet.Count) return $"No word from any aircraft{at}: nothing new can be said";
        var still = open > 0 ? $", {NumberWords.Count(open, "flag", "flags")} still open" : string.Empty;
        if (draft.Silences.Count + draft.Inputs.SilentSources.Count > 0) return $"No new flags{at}{still}, and {Silent(draft)}";
        return newProblems > 0
            ? $"No new flags{at}{still}; {NumberWords.Count(newProblems, "data problem", "data problems")} to sort out"
            : $"Quiet week{at}: no new flags{still}";
    }

    private static string Silent(ReportDraft draft)
    {
        List<string> silent = [];
        var inspectionsOnly = draft.Silences.Count(s => s.HoursStillCome);
        if (draft.Silences.Count > inspectionsOnly) silent.Add($"no word from {NumberWords.Count(draft.Silences.Count - inspectionsOnly)} aircraft");
        if (inspectionsOnly > 0) silent.Add($"no inspections of {NumberWords.Count(inspectionsOnly)} aircraft");
        if (draft.Inputs.SilentSources.Count > 0) silent.Add($"no word from {NumberWords.Count(draft.Inputs.SilentSources.Count, "source", "sources")}");
        return string.Join(" and ", silent);
    }

    private static string Headlines(List<FlagLine> fresh)
    {
        var shown = string.Empty;
        for (var i = 0; i < fresh.Count; i++)
        {
            var next = (i == 0 ? string.Empty : "; ") + FlagHeadline.Format(fresh[i].Flag);
            if (i > 0 && shown.Length + next.Length > MostCharacters - 50) return $"{shown}; {fresh.Count - i} more";
            shown += next;
        }

        return shown;
    }

    // A name with a line break in it must not start another header.
    private static string OneLine(string text)
    {
        var clean = string.Join(' ', ForeignText.OneLine(text).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return clean.Length <= MostCharacters + 20 ? clean : clean[..(MostCharacters + 17)] + "...";
    }
}
