using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;

namespace FleetTrend.Records.Tests.Words;

/// <summary>Conditions, actions and locations in a mechanic's words, none left without.</summary>
public sealed class TradeWordsTests
{
    [Fact]
    public void Every_condition_has_words_of_its_own()
    {
        Condition[] all = [.. Enum.GetValues<Condition>().Where(c => c != Condition.Other)];
        Assert.All<Func<Condition, string>>(
            [ConditionWords.Name, ConditionWords.One, ConditionWords.Many, ConditionWords.Again, ConditionWords.CameBack],
            words => Assert.Equal(all.Length, all.Select(words).Except([words(Condition.Other)]).Distinct().Count()));
    }

    [Theory] // A location may erode more than once, so that cases are counted and not locations.
    [InlineData(1, Condition.Crack, "1 crack")]
    [InlineData(3, Condition.Crack, "3 cracks")]
    [InlineData(2, Condition.MissingPiece, "2 missing pieces")]
    [InlineData(1, Condition.Erosion, "1 case of erosion")]
    [InlineData(1200, Condition.Wear, "1,200 cases of wear")]
    [InlineData(0, Condition.Other, "0 other findings")]
    public void A_count_of_a_condition_reads(int count, Condition condition, string words) =>
        Assert.Equal(words, ConditionWords.Count(count, condition));

    [Fact]
    public void Every_action_has_words_of_its_own()
    {
        var all = Enum.GetValues<ActionKind>();
        Assert.All<Func<ActionKind, string>>(
            [ActionWords.Done, ActionWords.Name, ActionWords.Many],
            words => Assert.Equal(all.Length, all.Select(words).Except(["other action"]).Distinct().Count()));
    }

    [Fact] // The more frequent first.
    public void What_was_done_often_is_counted() => Assert.Equal(
        "welded 2 times, stop-drilled once",
        ActionWords.CountDone([ActionKind.StopDrilled, ActionKind.WeldRepaired, ActionKind.WeldRepaired]));

    [Theory]
    [InlineData("exhaust/cyl-3/flange-weld", "cyl 3 flange weld")]
    [InlineData("oil/cooler/inlet-hose", "oil cooler inlet hose")]
    public void A_path_reads_as_a_mechanic_says_it(string path, string words) => Assert.Equal(words, LocationWords.Name(path));

    [Theory]
    [InlineData("exhaust gasket", "exhaust gaskets")]
    [InlineData("weld of the collector", "welds of the collector")]
    public void A_kind_as_many(string kind, string words) => Assert.Equal(words, LocationWords.Plural(kind));
}
