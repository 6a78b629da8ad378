using FleetTrend.Records.Words;

namespace FleetTrend.Trends.Spares;

/// <summary>How spares read.</summary>
public static class SpareWords
{
    /// <summary>What the numbers are and what they are not, for every list of them.</summary>
    public const string Meaning =
        "How many parts each base will need, if parts last as their like did and aircraft fly as before. Parts that are renewed by a time limit or for other work come on top. "
        + "Stock is the newest count, less what went in since; deliveries since are known with the next count.";

    /// <summary>How they are worked out.</summary>
    public const string Method =
        "Each part in service fails by the fitted life of its kind at its age, is found at its next look and renewed there; hours by each aircraft's own pace, with the season of the "
        + "year before. The range takes in chance, what is not known of the fitted life, and how much aircraft vary (Barlow and Proschan 1965; Meeker and Escobar 1998).";

    /// <summary>A need in one line: what is missing, or how many will be needed; and what to do.</summary>
    public static string Statement(SpareNeed need)
    {
        ArgumentNullException.ThrowIfNull(need);
        if (need.Horizons.Count == 0)
            return $"{need.Base}: {Nothing(need)}";
        if (need.Shortage is { } shortage)
        {
            return $"{need.Base} is short by {Parts(need, shortage.Missing)} within {Days(shortage.Horizon.Days)}: {NumberWords.Count(need.Stock!.OnHand)} on hand, "
                + $"{NumberWords.Count(need.Needed(shortage.Horizon))} would be enough with a chance of {NumberWords.PercentInFull(need.ServiceLevel)}{Order(need)}";
        }

        var last = need.Horizons[^1];
        return need.Stock is { } stock
            ? $"{need.Base}: {Parts(need, stock.OnHand)} on hand {(stock.OnHand is 1 ? "is" : "are")} enough for {Days(last.Days)}; {Range(need, last)} will be needed"
            : $"{need.Base}: {Range(need, last)} {Name(need)} will be needed within {Days(last.Days)}; "
                + $"{NumberWords.Count(need.Needed(last))} would be enough with a chance of {NumberWords.PercentInFull(need.ServiceLevel)}";
    }

    /// <summary>The range of a horizon: <c>2 to 9</c>; with parts that it can't count, <c>at least 2 to 9</c>.</summary>
    public static string Range(SpareNeed need, SpareHorizon horizon)
    {
        ArgumentNullException.ThrowIfNull(need);
        var interval = need.IntervalOf(horizon);
        var range = interval.Lower == interval.Upper ? NumberWords.Count((long)interval.Upper) : $"{NumberWords.Count((long)interval.Lower)} to {NumberWords.Count((long)interval.Upper)}";
        return need.AgeUnknown + need.TooFewFailures > 0 ? $"at least {range}" : range;
    }

    /// <summary>The parts by name, with their number where it is known: <c>gaskets (G-7)</c>.</summary>
    public static string Name(SpareNeed need)
    {
        ArgumentNullException.ThrowIfNull(need);
        return Named(need, string.Join(" or ", need.KindTitles.Select(t => LocationWords.Plural(LocationWords.Kind(t, "")))));
    }

    /// <summary>What the forecast leaves out, or counts for certain: <c>2 wait for a part</c>; empty where there is nothing to say.</summary>
    public static string Notes(SpareNeed need)
    {
        ArgumentNullException.ThrowIfNull(need);
        List<string> notes = [];
        if (need.Waiting > 0)
            notes.Add($"{NumberWords.Count(need.Waiting)} failed and {(need.Waiting is 1 ? "waits" : "wait")} for a part");
        if (need.AgeUnknown > 0)
            notes.Add($"{NumberWords.Count(need.AgeUnknown)} in service of unknown age not counted");
        if (need.TooFewFailures > 0 && need.Horizons.Count > 0)
            notes.Add($"{NumberWords.Count(need.TooFewFailures)} in service that have failed too seldom not counted");
        if (need.PartsPerFailure is < 0.995 or > 1.005)
            notes.Add($"a failure takes {NumberWords.Rounded(need.PartsPerFailure)} parts");
        if (need.Stock is { UsedSince: > 0 } stock)
            notes.Add($"{NumberWords.Count(stock.Quantity)} counted on {NumberWords.Day(stock.CountDate)}, {NumberWords.Count(stock.UsedSince)} went in since");
        return string.Join("; ", notes);
    }

    private static string Nothing(SpareNeed need)
    {
        var used = need.UsedInYear == 0 ? "none went in" : $"{NumberWords.Count(need.UsedInYear)} went in";
        var waiting = need.Waiting > 0 ? $"; {NumberWords.Count(need.Waiting)} failed and {(need.Waiting is 1 ? "waits" : "wait")} for a part" : "";
        var why = need.TooFewFailures > 0 ? $"too few {Name(need)} have failed to say how many will be needed" : $"the ages of {Name(need)} are not known, so nothing can be said";
        return $"{why}; {used} in the last 365 days{waiting}";
    }

    private static string Order(SpareNeed need) => need.Stock!.LeadTimeDays is not { } lead ? ""
        : need.OrderWithinDays is > 0 and var days ? $"; delivery takes {Days(lead)}: order within {Days(days)}"
        : $"; delivery takes {Days(lead)}: order now";

    private static string Parts(SpareNeed need, int count) => count == 1
        ? $"1 {Named(need, string.Join(" or ", need.KindTitles.Select(t => LocationWords.Kind(t, ""))))}"
        : $"{NumberWords.Count(count)} {Name(need)}";

    private static string Named(SpareNeed need, string kinds) => need.PartNumber is { } number ? $"{kinds} ({number})" : kinds;

    private static string Days(int days) => NumberWords.Count(days, "day", "days");
}
