using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Quiet;

namespace FleetTrend.Statistics.Tests.Quiet;

public sealed class QuietTests
{
    private static readonly RateSpread Spread = new(4);

    // By hand: two periods of 5 expected each, nothing found. The other unit has what is expected of it, so that nothing moves. k = 4, N = 0:
    // since the first period, weight 1/2 + 1/78: ((4 + 10) / (4 + 10 q))^4; since the second, weight 1/78: ((4 + 10) / (4 + 5 + 5 q))^4.
    [Fact]
    public void Odds_in_closed_form()
    {
        double Mean(Func<double, double> of) => new[] { 0.01, 0.1, 0.2, 1.0 / 3 }.Average(of);
        var odds = Mean(q => Math.Pow(14 / (4 + 10 * q), 4)) * (0.5 + 1.0 / 78) + Mean(q => Math.Pow(14 / (9 + 5 * q), 4)) / 78;
        var found = Watch([], Spread).At(0)!;
        Assert.Equal(Math.Log(odds), found.Log, 10);
        Assert.Equal((0, 0, 10.0), (found.Since, found.Found, Math.Round(found.Expected, 10)));
        Assert.True(found.IsAsked);
    }

    // By hand: three found in the first period of two, so that q^3 stands before the whole time, and q^0 before the second period; k + N = 7.
    [Fact]
    public void Findings_before_the_silence_tell_the_level()
    {
        double Mean(Func<double, double> of) => new[] { 0.01, 0.1, 0.2, 1.0 / 3 }.Average(of);
        var odds = Mean(q => Math.Pow(q, 3) * Math.Pow(14 / (4 + 10 * q), 7)) * (0.5 + 1.0 / 78) + Mean(q => Math.Pow(14 / (9 + 5 * q), 7)) / 78;
        Assert.Equal(Math.Log(odds), Watch([0, 0, 0], Spread).At(0)!.Log, 10);
    }

    [Fact] // By hand: findings and expected over the dispersion 2: k = 4, 5 expected in all, 2.5 in a period.
    public void Bunches_tell_less()
    {
        double Mean(Func<double, double> of) => new[] { 0.01, 0.1, 0.2, 1.0 / 3 }.Average(of);
        var odds = Mean(q => Math.Pow(9 / (4 + 5 * q), 4)) * (0.5 + 1.0 / 78) + Mean(q => Math.Pow(9 / (6.5 + 2.5 * q), 4)) / 78;
        Assert.Equal(Math.Log(odds), Watch([], Spread with { Dispersion = 2 }).At(0)!.Log, 10);
    }

    // By hand: the other unit, of whom ten were expected in each period, has all its 20 in the first: since the second (3 + 0) / (3 + 10) of 5.
    [Fact]
    public void What_falls_for_everybody_is_expected_of_nobody()
    {
        var watch = new QuietWatch(Panel([], [.. Enumerable.Repeat(0, 20)]), Spread);
        Assert.Equal(5 * 3.0 / 13, watch.ExpectedSince(0, 1), 10);
        Assert.Equal(10, watch.ExpectedSince(0, 0), 10);
    }

    [Theory] // A third of the ten expected is 3.33.
    [InlineData(3, true)]
    [InlineData(4, false)]
    public void It_is_asked_about_with_at_most_a_third(int found, bool isAsked) =>
        Assert.Equal(isAsked, new QuietOdds(Math.Log(QuietOdds.Limit) + 1e-9, 0, found, 10).IsAsked);

    [Fact]
    public void It_is_asked_about_from_the_limit_on() => Assert.False(new QuietOdds(Math.Log(QuietOdds.Limit) - 1e-9, 0, 0, 10).IsAsked);

    [Fact] // Ten expected and none found are asked about, as above; of one expected nothing can be said, whatever is found.
    public void With_few_looks_nothing_can_be_asked()
    {
        Assert.True(Watch([0, 1, 1, 0, 0, 1, 1, 0, 0], Spread).CanBeAsked(0));
        Assert.False(new QuietWatch(Panel([], [.. Enumerable.Repeat(0, 10), .. Enumerable.Repeat(1, 10)], own: 0.5), Spread).CanBeAsked(0));
    }

    // By hand: two classes over one location each, 4 units of exposure 10 in each of two periods. In the first class each of the others has 4 findings in
    // 20, 12 in 60, so that own 20 give (1 + 12) / (60 / 12.5 + 60) x 20; in the second 2 each, 6 in 60: (1 + 6) / (60 / 6.5 + 60) x 20 (rates shrunk to
    // the mean of the class, with half a finding more).
    [Fact]
    public void Classes_are_added_up_at_the_rates_of_the_others()
    {
        WatchedPanel Class(int each) => new(2, 28 / 365.25, [new ChangeScope("", [], 1)], [.. Enumerable.Range(0, 4).Select(i =>
            new WatchedUnit($"{i}", 0, [[10.0], [10.0]], Enumerable.Range(0, i == 0 ? 0 : each).Select(n => new UnitFinding(n % 2, 0))))]);
        var panel = CombinedPanel.Build([Class(4), Class(2)], 1);
        Assert.Equal(20 * 13 / (60 / 12.5 + 60) + 20 * 7 / (60 / 6.5 + 60), panel.Units[0].ExposureSince(0), 10);
        Assert.Empty(panel.Units[0].Findings);
        Assert.Equal(6, panel.Units[1].Findings.Count);
        // At the end of the first period each of the others has two and one.
        var early = CombinedPanel.Build([Class(4), Class(2)], 0);
        Assert.Equal(10 * 7 / (30 / 6.5 + 30) + 10 * 4 / (30 / 3.5 + 30), early.Units[0].ExposureSince(0), 10);
        Assert.Equal(1, early.Periods);
    }

    private static QuietWatch Watch(int[] found, RateSpread spread) =>
        new(Panel(found, [.. Enumerable.Repeat(0, 10), .. Enumerable.Repeat(1, 10)]), spread);

    /// <summary>A unit of which five are expected in each of two periods, beside one of which ten are.</summary>
    private static WatchedPanel Panel(int[] found, int[] others, double own = 5) => new(2, 28 / 365.25, [new ChangeScope("", [], 1)],
    [
        new WatchedUnit("1", 0, [[own], [own]], found.Select(p => new UnitFinding(p, 0))),
        new WatchedUnit("2", 0, [[10.0], [10.0]], others.Select(p => new UnitFinding(p, 0))),
    ]);
}
