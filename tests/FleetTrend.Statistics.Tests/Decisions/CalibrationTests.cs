using FleetTrend.Statistics.Decisions;

namespace FleetTrend.Statistics.Tests.Decisions;

/// <summary>Stated chances beside what happened.</summary>
public sealed class CalibrationTests
{
    // By hand: four at 0.1 and four at 0.5. Of four at 0.1, P(0) = 0.6561, P(at least 2) = 0.0523, P(at least 3) = 0.0037: 95 % leave 0 to 2 open, since
    // 0.0523 is above 0.025. Of four at 0.5, P(0) = P(4) = 0.0625: 0 to 4.
    [Fact]
    public void Groups_of_equal_size_have_what_was_foreseen_and_found_with_binomial_limits()
    {
        var groups = Calibration.Compare([.. Alike(0.5, 4, 3), .. Alike(0.1, 4, 0)], groups: 2);
        Assert.Equal([new(0.1, 0.1, 4, 0.4, 0, 0, 2), new(0.5, 0.5, 4, 2, 3, 0, 4)], groups);
        Assert.DoesNotContain(groups, g => g.IsOff);
    }

    [Fact] // Of four at 0.1, three is outside of 0 to 2.
    public void What_the_chances_do_not_leave_open_is_off() => Assert.True(Assert.Single(Calibration.Compare(Alike(0.1, 4, 3), groups: 1)).IsOff);

    [Fact]
    public void Every_outcome_is_in_one_group()
    {
        var outcomes = Enumerable.Range(0, 23).Select(i => new ForeseenOutcome(i / 23.0, i % 3 == 0)).ToList();
        var groups = Calibration.Compare(outcomes);
        Assert.Equal((10, 23, 8), (groups.Count, groups.Sum(g => g.Count), groups.Sum(g => g.Found)));
        Assert.All(groups, g => Assert.InRange(g.Count, 2, 3));
        Assert.Equal(outcomes.Sum(o => o.Chance), groups.Sum(g => g.Expected), 12);
        Assert.Equal(groups, Calibration.Compare(outcomes.AsEnumerable().Reverse()));
    }

    [Fact]
    public void Nothing_has_no_groups_and_few_have_few()
    {
        Assert.Empty(Calibration.Compare([]));
        Assert.Equal([new(0, 0, 1, 0, 0, 0, 0), new(1, 1, 1, 1, 1, 1, 1)], Calibration.Compare([new(1, true), new(0, false)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Calibration.Compare([new(1.2, true)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Calibration.Compare([], groups: 0));
    }

    private static IEnumerable<ForeseenOutcome> Alike(double chance, int count, int happened) =>
        Enumerable.Range(0, count).Select(i => new ForeseenOutcome(chance, i < happened));
}
