using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Plots;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Standings;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>The plot of observed over expected per tail, for the condition of the most pressing flag.</summary>
internal static class StandingPicture
{
    private const int MostTails = 24;

    public static Block.Picture? Compose(ReportDraft draft)
    {
        var condition = draft.Flags.FirstOrDefault(f => f.Flag.Kind == FlagKind.AirframeDrift)?.Flag.Condition ?? Condition.Crack;
        var flying = draft.Fleet.ToDictionary(l => l.Registration, l => l.TypeGroup, StringComparer.Ordinal);
        var standings = draft.Current.Standings
            .Where(a => a.Condition == condition && flying.TryGetValue(a.Registration, out var group) && group == a.TypeGroup && a.Ratio.Value is not null)
            .OrderByDescending(a => a.Ratio.Value).ThenBy(a => a.Registration, StringComparer.Ordinal)
            .ToList();
        if (standings.Count < 2) return null;
        var flagged = draft.Flags
            .Where(f => f.Flag.Kind == FlagKind.AirframeDrift && f.Flag.Condition == condition && f.Flag.Registration is not null)
            .Select(f => f.Flag.Registration!)
            .ToHashSet(StringComparer.Ordinal);
        var shown = standings.Take(MostTails).ToList();
        var method = shown[0].Ratio;
        return draft.Show(new StandingPlot(
            "standings", Alt(condition, standings, flagged), Caption(draft, condition, shown, standings.Count, method),
            [.. shown.Select(a => Dot(a, flagged))]));
    }

    private static StandingDot Dot(AirframeStanding standing, HashSet<string> flagged) => new(
        $"{standing.Registration}  {standing.Observed} / {NumberWords.Expected(standing.Expected, standing.Expectation?.Lower, standing.Expectation?.Upper)}",
        standing.Ratio.Value!.Value, standing.Ratio.Lower, standing.Ratio.Upper, flagged.Contains(standing.Registration));

    private static string Alt(Condition condition, List<AirframeStanding> standings, HashSet<string> flagged)
    {
        var top = string.Join(", ", standings.Take(3).Select(a => $"{a.Registration} {FigureWords.Format(a.Ratio, FigureStyle.Times).OneLine}"));
        var marked = standings.Where(a => flagged.Contains(a.Registration)).Select(a => a.Registration).ToList();
        var flags = marked.Count > 0 ? $" Flagged: {string.Join(", ", marked)}." : " None of them is flagged for it.";
        return $"Dot plot of {ConditionWords.Many(condition)} observed over expected for {standings.Count} aircraft. Highest: {top}.{flags}";
    }

    private static string Limits(ReportDraft draft, AirframeStanding standing) =>
        standing.Expectation is { } expected ? $" with its limits [{draft.Methods.NumberOf(expected.Method)}]" : "";

    private static string Caption(
        ReportDraft draft, Condition condition, List<AirframeStanding> shown, int all, Trends.Figure method)
    {
        var number = draft.Methods.NumberOf(method.Method);
        var some = all > shown.Count ? $" The {shown.Count} highest of {all} aircraft." : string.Empty;
        return $"Observed over expected {ConditionWords.Many(condition)} per aircraft, with {NumberWords.PercentInFull(method.Confidence)} intervals; "
            + $"beside each tail its counts, observed / expected{Limits(draft, shown[0])}.{some} Diamonds are flagged for it; triangles have none observed. Method [{number}], {draft.AsOf}.";
    }
}
