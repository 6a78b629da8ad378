using FleetTrend.Statistics.Changes;

namespace FleetTrend.Statistics.Tests.Changes;

public sealed class ChangeScoreTests
{
    private static readonly ChangePrior Prior = new() { WindowPeriods = 5, LargestLevelShape = double.PositiveInfinity };

    [Fact] // By hand: k = 2, N = 3, E = 2, two of the three since t where 0.5 was expected, ratio 4: 4^2 ((2 + 2) / (4 + 3 * 0.5))^5 = 16 (4 / 5.5)^5.
    public void One_term_in_closed_form()
    {
        Assert.Equal(16 * Math.Pow(4 / 5.5, 5), Math.Exp(ChangeLikelihood.LogRatio(2, 3, 2, 2, 0.5, 4)), 12);
    }

    [Fact] // Constructed; written out in R, where the closed form was checked against the integral over the level.
    public void Score_of_three_units_in_R()
    {
        var reference = ReferenceCase.Load("change-score");
        var panel = Panel(reference);
        reference.Equal(panel.LocationShape, "location_shape");
        var watch = new ChangeWatch(panel, new RateSpread(reference.Parameter("shape"), reference.Parameter("dispersion")), Prior);
        reference.Equal(Enumerable.Range(0, 3).Select(u => watch.At(u, 7)!.Log), "score");
        reference.Equal(Enumerable.Range(0, 3).Select(u => watch.At(u, 5)!.Log), "earlier");
        reference.Equal(ChangeLikelihood.LogRatio(6, 7, 4.2, 5, 1.3, 3), "single");
    }

    [Fact]
    // By hand: one location, two units. The other had 3 in 10: shape 1, scale 10 / 3.5, so that the rate is (1 + 3) / (10 / 3.5 + 10) = 0.31111.
    // Own: 1 in 6 periods of exposure 1, found in the last. k = 4, window 1, ratio 5 alone: 5 ((4 + 6 r) / (4 + 6 r + 4 r))^5 with r = 0.31111.
    public void One_look_and_one_scope_in_closed_form()
    {
        var own = Unit("own", 6, 1, _ => 1, [new(5, 0)]);
        var other = Unit("other", 10, 1, _ => 1, [new(0, 0), new(1, 0), new(2, 0)]);
        var panel = new WatchedPanel(10, 0.1, [new ChangeScope("whole", [], 1)], [own, other]);
        var prior = new ChangePrior { Ratios = [5], RatioWeights = [1], WindowPeriods = 1, LargestLevelShape = 4 };
        var rate = 4 / (6 / 3.5 + 6); // six periods of the other have passed by then
        var expected = Math.Log(5 * Math.Pow((4 + 6 * rate) / (4 + 10 * rate), 5));
        Assert.Equal(expected, new ChangeWatch(panel, new RateSpread(4), prior).At(0, 5)!.Log, 10);
    }

    [Fact] // A unit is measured by its own past where its like are much alike: the score of shape 100 is that of the largest shape allowed.
    public void The_level_comes_from_no_narrower_a_spread_than_allowed()
    {
        var panel = Panel(ReferenceCase.Load("change-score"));
        double Score(double shape, double largest) => new ChangeWatch(panel, new RateSpread(shape), Prior with { LargestLevelShape = largest }).At(0, 7)!.Log;
        Assert.Equal(Score(3, double.PositiveInfinity), Score(100, 3), 12);
        Assert.Equal(Score(1, double.PositiveInfinity), Score(1, 3), 12);
        Assert.NotEqual(Score(100, double.PositiveInfinity), Score(100, 3), 3);
    }

    [Fact]
    public void More_findings_lately_score_higher_and_more_findings_before_lower()
    {
        double Score(int before, int since) => Scores(before, since).Log;
        for (var since = 1; since < 6; since++)
            Assert.True(Score(2, since + 1) > Score(2, since));
        for (var before = 0; before < 6; before++)
            Assert.True(Score(before + 1, 4) < Score(before, 4));
    }

    [Fact] // Findings at one location name it, findings all over the unit name the whole, those of one bank the bank.
    public void The_part_that_changed_is_named()
    {
        Assert.Equal("left 1", Described([0, 0, 0, 0, 0]).Scope.Name);
        Assert.Equal("left", Described([0, 1, 0, 1, 0, 1]).Scope.Name);
        Assert.Equal("whole", Described([0, 1, 2, 3, 0, 1, 2, 3]).Scope.Name);
    }

    [Fact]
    public void Since_when_is_told_with_what_was_found_before_and_after()
    {
        var score = Scores(before: 1, since: 6);
        Assert.InRange(score.Since, 30, 31);
        Assert.True(score.SinceEarliest <= score.Since && score.Since <= score.SinceLatest);
        Assert.Equal(1, score.FoundBefore);
        Assert.Equal(6, score.FoundSince);
        Assert.True(score.ExpectedSince < 2 && score.Ratio >= 3 && score.Chance > 0.5);
    }

    [Fact] // Twenty times the largest counts that a fleet could have: the score stays a number.
    public void Huge_counts_do_not_overflow()
    {
        var findings = Enumerable.Range(0, 2000).Select(i => new UnitFinding(30 + i % 2, 0));
        var panel = Panel(findings);
        var score = new ChangeWatch(panel, new RateSpread(8), new ChangePrior()).At(0, 31)!;
        Assert.True(double.IsFinite(score.Log) && score.Log > 700 && score.Chance > 0.999);
    }

    [Fact] // A unit whose whole time lies in the change has a level, and no change.
    public void What_was_so_from_the_first_look_is_no_change()
    {
        var high = Unit("high", 3, 1, _ => 1, [new(0, 0), new(0, 0), new(0, 0), new(1, 0), new(1, 0), new(2, 0), new(2, 0)]);
        var others = Enumerable.Range(0, 9).Select(i => Unit($"{i}", 3, 1, _ => 1, [new(1, 0)]));
        var panel = new WatchedPanel(3, 0.1, [new ChangeScope("whole", [], 1)], [high, .. others]);
        Assert.True(new ChangeWatch(panel, new RateSpread(4), new ChangePrior()).At(0, 2)!.Log < 0);
    }

    [Fact]
    public void A_unit_without_findings_or_without_others_has_no_score()
    {
        var panel = new WatchedPanel(2, 0.1, [new ChangeScope("whole", [], 1)], [Unit("one", 2, 1, _ => 1, [])]);
        Assert.Null(new ChangeWatch(panel, new RateSpread(4), new ChangePrior()).At(0, 1));
        var alone = new WatchedPanel(2, 0.1, [new ChangeScope("whole", [], 1)], [Unit("one", 2, 1, _ => 1, [new(1, 0)])]);
        Assert.Null(new ChangeWatch(alone, new RateSpread(4), new ChangePrior()).At(0, 1));
    }

    [Fact] // By hand: half on the whole, a quarter each over two banks and four locations; without banks the quarter goes to the others in proportion.
    public void Weights_of_the_parts()
    {
        var scopes = ChangeScope.Spread("whole", ["a", "b", "c", "d"], [("left", [0, 1]), ("right", [2, 3]), ("all", [0, 1, 2, 3]), ("one", [0])]);
        Assert.Equal([0.5, 0.125, 0.125, 0.0625, 0.0625, 0.0625, 0.0625], scopes.Select(s => s.Weight));
        Assert.Equal([2.0 / 3, 1.0 / 6, 1.0 / 6], ChangeScope.Spread("whole", ["a", "b"], []).Select(s => s.Weight));
    }

    private static ChangeScore Scores(int before, int since)
    {
        var findings = Enumerable.Range(0, before).Select(i => new UnitFinding(2 + i % 25, i % 4))
            .Concat(Enumerable.Range(0, since).Select(i => new UnitFinding(30 + i % 2, i % 4)));
        return new ChangeWatch(Panel(findings), new RateSpread(8), new ChangePrior()).At(0, 31)!;
    }

    private static ChangeScore Described(int[] locations) =>
        new ChangeWatch(Panel(locations.Select(l => new UnitFinding(30, l))), new RateSpread(8), new ChangePrior()).At(0, 31)!;

    // Ten units of four locations in two banks; each of the others had one finding at each location in 32 periods.
    private static WatchedPanel Panel(IEnumerable<UnitFinding> findings)
    {
        var scopes = ChangeScope.Spread("whole", ["left 1", "left 2", "right 1", "right 2"], [("left", [0, 1]), ("right", [2, 3])]);
        var others = Enumerable.Range(0, 9)
            .Select(u => Unit($"{u}", 32, 4, _ => 1, [.. Enumerable.Range(0, 4).Select(l => new UnitFinding(3 * u + l, l))]));
        return new WatchedPanel(32, 28 / 365.25, scopes, [Unit("own", 32, 4, _ => 1, [.. findings]), .. others]);
    }

    private static WatchedUnit Unit(string name, int periods, int locations, Func<int, double> exposure, UnitFinding[] findings) =>
        new(name, 0, [.. Enumerable.Range(0, periods).Select(p => Enumerable.Repeat(exposure(p), locations).ToArray())], findings);

    private static WatchedPanel Panel(ReferenceCase reference)
    {
        var rows = reference.Counts("unit").Zip(reference.Counts("period"), reference.Counts("location"))
            .Zip(reference.Column("exposure"), reference.Counts("found"))
            .Select(r => (Unit: r.First.First, Period: r.First.Second - 1, Location: r.First.Third - 1, Exposure: r.Second, Found: r.Third)).ToList();
        var units = rows.GroupBy(r => r.Unit).Select(g =>
        {
            var first = g.Where(r => r.Exposure > 0).Min(r => r.Period);
            return new WatchedUnit(
                $"{g.Key}", first,
                [.. g.Where(r => r.Period >= first).GroupBy(r => r.Period).Select(p => p.OrderBy(r => r.Location).Select(r => r.Exposure).ToArray())],
                g.SelectMany(r => Enumerable.Repeat(new UnitFinding(r.Period, r.Location), r.Found)));
        });
        return new WatchedPanel(
            8, 0.1,
            [new("whole", [], 0.5), new("pair", [0, 1], 0.25), new("first", [0], 0.25 / 3), new("second", [1], 0.25 / 3), new("third", [2], 0.25 / 3)],
            [.. units]);
    }
}
