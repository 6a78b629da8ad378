using FleetTrend.Records.Words;

namespace FleetTrend.Trends.Scores;

/// <summary>How the score reads.</summary>
public static class ScoreWords
{
    /// <summary>What the score is, for every list of it.</summary>
    public const string Meaning =
        "Every forecast is kept as it was first published in a quarter, and held against what then happened, by the records known now. A quarter is judged once it is "
        + "over, together with the one before.";

    /// <summary>How it is judged.</summary>
    public const string Method =
        "A forecast is called off when what happened is out of its stated error so far that, were it right, at most 1 operator of 20 would ever be told so within three "
        + "years, over all type groups, quarters and forecasts. The error of chances takes in chance itself, what was not known of the fitted lives, and how much aircraft differ "
        + "(McCullagh and Nelder 1989; Meeker and Escobar 1998).";

    /// <summary>Chances are those of the hours flown.</summary>
    public const string Chances =
        "The chance of a look is that of the hours flown since the look before, by the fitted lives as they were published at the beginning of the quarter.";

    /// <summary>Spares are counted as they were foreseen.</summary>
    public const string Spares =
        "Counted are parts that failures took: found failed within the days, or waiting on the first, replaced and not repaired, with the good sisters that went out with them.";

    /// <summary>Days that were named have no stated error.</summary>
    public const string DueLooks = "A day is an estimate without a stated error, so it is not judged. It counts as met by a look on that day or before, or before the hours were flown.";

    /// <summary>What calls come to.</summary>
    public const string Calls =
        "By the quarter in which they were raised. A call closed without an action counts as nothing found; chance alone raises so many calls in the aircraft-years of the quarter, by your "
        + "parameters. A first import raises at once what years had gathered.";

    private const int QuartersTold = 2;

    /// <summary>The newest score of each type group that is over, and so may hold a verdict on chances; by type group.</summary>
    public static IReadOnlyList<Score> Newest(IEnumerable<Score> scores) =>
    [
        .. scores.Where(s => s.IsOver).GroupBy(s => s.TypeGroup, StringComparer.Ordinal).Select(g => g.MaxBy(s => s.Quarter.StartDate)!)
            .OrderBy(s => s.TypeGroup, StringComparer.Ordinal),
    ];

    /// <summary>The newest score of each type group with a verdict on spares: of the last quarter, or while its days ahead are not over of the one
    /// before.</summary>
    public static IReadOnlyList<Score> NewestOfSpares(IEnumerable<Score> scores) =>
    [
        .. scores.Where(s => s.IsOver).GroupBy(s => s.TypeGroup, StringComparer.Ordinal)
            .Select(g => g.OrderByDescending(s => s.Quarter.StartDate).Take(QuartersTold).FirstOrDefault(s => s.SparesOfTwo is { IsOff: not null }))
            .OfType<Score>().OrderBy(s => s.TypeGroup, StringComparer.Ordinal),
    ];

    /// <summary>A sentence for each type group whose chances were off in the last two quarters; none where none were.</summary>
    public static IReadOnlyList<string> ChancesOff(IEnumerable<Score> scores) =>
        [.. Newest(scores).Where(s => s.ChancesOfTwo is { IsOff: true }).Select(s => $"{s.TypeGroup}: {Chance(s.Quarter, s.ChancesOfTwo!)}")];

    /// <summary>A sentence for each type group whose spares were off in the last two quarters; none where none were.</summary>
    public static IReadOnlyList<string> SparesOff(IEnumerable<Score> scores) =>
        [.. NewestOfSpares(scores).Where(s => s.SparesOfTwo is { IsOff: true }).Select(s => $"{s.TypeGroup}: {Spare(s.SparesOfTwo!)}")];

    /// <summary>What became of the spares foreseen in two quarters, in a sentence.</summary>
    public static string Spare(SpareScore score)
    {
        ArgumentNullException.ThrowIfNull(score);
        if (score.Judged is not { Forecasts: > 0 } judged)
            return "no forecast of spares whose days are over can be scored.";
        var counts = $"of {NumberWords.Count(judged.Forecasts, "forecast", "forecasts")} of spares for {NumberWords.Count(judged.Days, "day", "days")} since "
            + $"{NumberWords.Day(score.KeptDate)} {NumberWords.Count(judged.Held)} held; {NumberWords.Count(judged.Needed, "part was", "parts were")} needed where "
            + $"{NumberWords.Rounded(judged.Expected)} {(judged.Expected is > 0.995 and < 1.005 ? "was" : "were")} expected ({NumberWords.Count(judged.Lower)} to {NumberWords.Count(judged.Upper)} would fit)";
        return score.IsOff switch
        {
            true => $"{counts}: these forecasts are off.",
            false => $"{counts}: these forecasts are within their stated error.",
            null => $"{counts}: not judged yet.",
        };
    }

    /// <summary>What became of the forecasts of a quarter and the one before, in sentences; none until it is over.</summary>
    public static IEnumerable<string> Statements(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        if (score.ChancesOfTwo is { } chances)
            yield return $"Chances before the next look: {Chance(score.Quarter, chances)}";
        if (score.SparesOfTwo is { } spares)
            yield return $"Spares: {Spare(spares)}";
    }

    /// <summary>What became of the chances of two quarters, in a sentence.</summary>
    /// <param name="last">The second of them.</param>
    /// <param name="score">Their score.</param>
    public static string Chance(Quarter last, ChanceScore score)
    {
        ArgumentNullException.ThrowIfNull(score);
        if (score.Looks == 0)
            return $"no part with a chance was looked at from {NumberWords.Period(score.FromDate, last.EndDate)}.";
        var counts = $"in the last two quarters ({NumberWords.Period(score.FromDate, last.EndDate)}) {NumberWords.Count(score.Found)} {(score.Found is 1 ? "was" : "were")} "
            + $"found failed where {NumberWords.Rounded(score.Expected)} {(score.Expected is > 0.995 and < 1.005 ? "was" : "were")} expected ({NumberWords.Count(score.Lower)} to {NumberWords.Count(score.Upper)} would fit)";
        return score.IsOff switch
        {
            true when score.IsOutside => $"{counts}: these chances are off.",
            true => $"{counts}, but too many or too few of the likely or the unlikely: these chances are off.",
            false => $"{counts}: these chances are within their stated error.",
            null => $"{counts}: too few looks to judge.",
        };
    }

    /// <summary>The verdict in a word or two, for a table.</summary>
    public static string Verdict(bool? isOff) => isOff switch { true => "off", false => "within", null => "not judged" };

    /// <summary>The answer in the first sentence.</summary>
    /// <param name="scores">The scores of all type groups.</param>
    public static string Answer(IReadOnlyList<Score> scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        if (scores.Count == 0)
            return "Nothing is scored yet: no forecast was kept before today. Each is kept from the first refresh on that has one, and held against what then happens.";
        var (newest, newestOfSpares) = (Newest(scores), NewestOfSpares(scores));
        if (newest.Count == 0)
        {
            var first = scores.Select(s => s.Chances?.FromDate ?? s.Spares?.KeptDate.AddDays(1)).Min() ?? scores[0].Quarter.StartDate;
            return $"Nothing is judged yet: forecasts are kept since {NumberWords.Day(first.AddDays(-1))}, and the first quarter ends on {NumberWords.Day(scores[0].Quarter.EndDate)}.";
        }

        var (off, within) = (Judged(true), Judged(false));
        return (off.Count, within.Count) switch
        {
            (0, 0) => "Too little has happened in the last two quarters to judge any forecast.",
            (0, _) => $"Right within the stated error in the last two quarters: {string.Join("; ", within)}.",
            (_, 0) => $"Off in the last two quarters: {string.Join("; ", off)}.",
            _ => $"Off in the last two quarters: {string.Join("; ", off)}. Right within the stated error: {string.Join("; ", within)}.",
        };

        List<string> Judged(bool isOff)
        {
            List<string> chances = [.. newest.Where(s => s.ChancesOfTwo?.IsOff == isOff).Select(s => s.TypeGroup)];
            List<string> found = [];
            if (chances.Count > 0)
                found.Add($"chances before the next look ({string.Join(", ", chances)})");
            List<string> spares = [.. newestOfSpares.Where(s => s.SparesOfTwo!.IsOff == isOff).Select(s => s.TypeGroup)];
            if (spares.Count > 0)
                found.Add($"spares ({string.Join(", ", spares)})");
            return found;
        }
    }
}
