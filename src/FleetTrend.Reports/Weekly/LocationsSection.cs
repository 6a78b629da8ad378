using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Levels;
using FleetTrend.Trends.Rates;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Where on a type group a condition arises: every location, or one with the others of its kind and the aircraft behind it. For pages.</summary>
public static class LocationsSection
{
    /// <summary>From this chance on to run above 1.5 times the others, a location stands out; less is too unsure to be said in a sentence.</summary>
    private const double StandsOut = 0.8;
    private const int MostAircraft = 75;

    /// <summary>All locations of a type group where a condition can arise, most found first.</summary>
    /// <param name="snapshot">The rates and levels of the type group.</param>
    /// <param name="condition">The condition.</param>
    public static ReportSection Compose(TrendSnapshot snapshot, Condition condition)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var draft = ReportDraft.OfPage(snapshot);
        var levels = LevelsOf(snapshot, condition);
        List<RateTrend> rates = [.. snapshot.Rates.Where(r => r.Location is not null && r.Condition == condition)
            .OrderByDescending(r => r.Rate.Events).ThenBy(r => r.Location, StringComparer.Ordinal)];
        var heading = $"{FirstLetter.Capital(ConditionWords.Many(condition))} by location";
        if (rates.Count == 0)
            return new ReportSection("locations", heading, [new Block.Paragraph($"No location of this type group can have it, {draft.AsOf}.")]);
        return new ReportSection("locations", heading,
        [
            new Block.Table(
                $"Every location that can have it, most found first, {draft.AsOf}",
                [new("Location"), new("Found", true), new("On aircraft", true), new("Rate", true), new("Times the others of its kind", true), new("Came back", true)],
                [.. rates.Select(r => (IReadOnlyList<Line>)
                [
                    LocationLink.OnPage(r.TypeGroup, r.Location!),
                    NumberWords.Count(r.Rate.Events),
                    $"{NumberWords.Count(r.Aircraft.Count)} of {NumberWords.Count(r.AircraftCount)}",
                    draft.Cell(r.Rate, FigureStyle.AsIs),
                    levels.GetValueOrDefault(r.Location!) is { } level ? draft.Cell(level.Ratio, FigureStyle.Times) : "none beside it",
                    $"{NumberWords.Count(r.RepeatCount)} of {NumberWords.Count(r.Rate.Events)}",
                ])]),
            .. draft.MethodBlocks(),
        ]);
    }

    /// <summary>Which location stands out, in a sentence.</summary>
    public static string Statement(TrendSnapshot snapshot, Condition condition)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var what = ConditionWords.Many(condition);
        List<RateTrend> rates = [.. snapshot.Rates.Where(r => r.Location is not null && r.Condition == condition && r.Rate.Events > 0)
            .OrderByDescending(r => r.Rate.Events).ThenBy(r => r.Location, StringComparer.Ordinal)];
        if (rates.Count == 0)
            return $"No {what} counted at any location: that does not show that there are none.";
        var counted = $"{FirstLetter.Capital(ConditionWords.Count(rates.Sum(r => r.Rate.Events), condition))}, "
            + $"most at {LocationWords.Name(rates[0].Location!)} ({NumberWords.Count(rates[0].Rate.Events)}).";
        var high = LevelsOf(snapshot, condition).Values.Where(l => l.ChanceAboveOneAndAHalf >= StandsOut)
            .OrderByDescending(l => l.ChanceAboveOneAndAHalf).ThenBy(l => l.Location, StringComparer.Ordinal).ToList();
        return high.Count == 0
            ? $"{counted} Beside the others of its kind no location stands out."
            : $"{counted} {FirstLetter.Capital(LocationWords.List([.. high.Select(l => l.Location!)]))} "
                + $"probably {(high.Count > 1 ? "run" : "runs")} above 1.5 times the others of {(high.Count > 1 ? "their kinds" : "its kind")}.";
    }

    /// <summary>One location: each condition beside the other locations of its kind, and the aircraft behind it.</summary>
    /// <param name="snapshot">Rates of the location and of the others of its kind, levels of the location.</param>
    /// <param name="location">Its path.</param>
    public static IEnumerable<ReportSection> ComposeOne(TrendSnapshot snapshot, string location)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var draft = ReportDraft.OfPage(snapshot);
        List<RateTrend> here = [.. snapshot.Rates.Where(r => r.Location == location).OrderByDescending(r => r.Rate.Events).ThenBy(r => r.Condition)];
        yield return new ReportSection("conditions", "What was found here",
        [
            new Block.Table(
                $"By condition, on all aircraft together, {draft.AsOf}",
                [new("What"), new("Found", true), new("Rate", true), new("Times the others of its kind", true), new("Came back", true)],
                [.. here.Select(r => (IReadOnlyList<Line>)
                [
                    FirstLetter.Capital(ConditionWords.Many(r.Condition)),
                    NumberWords.Count(r.Rate.Events),
                    draft.Cell(r.Rate, FigureStyle.AsIs),
                    LevelsOf(snapshot, r.Condition).GetValueOrDefault(location) is { } level ? draft.Cell(level.Ratio, FigureStyle.Times) : "none beside it",
                    $"{NumberWords.Count(r.RepeatCount)} of {NumberWords.Count(r.Rate.Events)}",
                ])]),
        ]);
        foreach (var rate in here.Where(r => r.Rate.Events > 0))
        {
            var what = ConditionWords.Many(rate.Condition);
            List<Block> blocks = [new Block.Table(
                $"Aircraft with {what} here, {draft.AsOf}",
                [new("Aircraft"), new("Found", true), new("Hours watched", true)],
                [.. rate.Aircraft.Take(MostAircraft).Select(a => (IReadOnlyList<Line>)
                    [AircraftLink.OnPage(a.Registration), NumberWords.Count(a.Events), NumberWords.HoursBare(a.Hours)])])];
            List<RateTrend> sisters = [.. snapshot.Rates.Where(r => r.Location is not null && r.Kind == rate.Kind && r.Condition == rate.Condition)
                .OrderByDescending(r => r.Rate.Value ?? 0).ThenBy(r => r.Location, StringComparer.Ordinal)];
            if (sisters.Count > 1)
            {
                blocks.Add(new Block.Table(
                    $"{FirstLetter.Capital(what)} here and at the others of its kind, the highest rate first",
                    [new("Location"), new("Found", true), new("Rate", true)],
                    [.. sisters.Select(r => (IReadOnlyList<Line>)
                    [
                        r.Location == location ? Line.Join(new Run.Strong("Here")) : LocationLink.OnPage(r.TypeGroup, r.Location!),
                        NumberWords.Count(r.Rate.Events),
                        draft.Cell(r.Rate, FigureStyle.AsIs),
                    ])]));
            }

            yield return new ReportSection($"of-{(int)rate.Condition}", FirstLetter.Capital(what), blocks);
        }

        if (draft.MethodBlocks().ToList() is { Count: > 0 } methods)
            yield return new ReportSection("methods", "How it is worked out", [.. methods.Skip(1)]);
    }

    /// <summary>Whether it is bad everywhere, in a sentence.</summary>
    public static string StatementOfOne(TrendSnapshot snapshot, string location)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var most = snapshot.Rates.Where(r => r.Location == location).OrderByDescending(r => r.Rate.Events).ThenBy(r => r.Condition).FirstOrDefault();
        if (most is null || most.Rate.Events == 0)
            return "Nothing was counted here: that does not show that nothing is here.";
        var counted = $"{FirstLetter.Capital(ConditionWords.Count(most.Rate.Events, most.Condition))} on {NumberWords.Count(most.Aircraft.Count)} "
            + $"of {NumberWords.Count(most.AircraftCount)} aircraft";
        if (LevelsOf(snapshot, most.Condition).GetValueOrDefault(location) is not { Ratio.Value: { } ratio } level)
            return $"{counted}; no other location of its kind is watched, so nothing is beside it.";
        var times = FigureWords.Format(level.Ratio, FigureStyle.Times);
        return level.ChanceAboveOneAndAHalf >= StandsOut
            ? $"{counted}: {times.Value} what the others of its kind have ({times.Interval})."
            : $"{counted}. Beside the others of its kind it does not stand out: {times.Value} what they have ({times.Interval}).";
    }

    private static Dictionary<string, Level> LevelsOf(TrendSnapshot snapshot, Condition condition) =>
        snapshot.Levels.Where(l => l.Location is not null && l.Condition == condition).ToDictionary(l => l.Location!, StringComparer.Ordinal);
}
