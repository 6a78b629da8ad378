using FleetTrend.Statistics.Monitoring;

namespace FleetTrend.Statistics.Tests.Monitoring;

public sealed class AlertLevelTests
{
    [Fact] // Transport Canada AMA 571.101/1 appendix A and common practice, arithmetic in R: ten levels from the same year.
    public void One_year_ten_levels()
    {
        var reference = ReferenceCase.Load("alert-levels-twelve-months");
        var levels = AlertLevel.All(Months(reference), reference.Parameter("coming_hours"));
        Assert.Equal(Enum.GetValues<AlertDefinition>(), levels.Select(l => l.Definition));
        foreach (var level in levels)
            reference.Equal(level.PerThousandHours, level.Definition.ToString());
    }

    [Theory] // Constructed example computed by hand in the domain facts: 7.126, 7.803, 8.480, 5.678, 5.583, 8.989, 11.228.
    [InlineData(AlertDefinition.MeanPlusTwoDeviations, 7.12598)]
    [InlineData(AlertDefinition.MeanPlusTwoAndAHalfDeviations, 7.80321)]
    [InlineData(AlertDefinition.MeanPlusThreeDeviations, 8.48045)]
    [InlineData(AlertDefinition.ThreeMonthPooledRateTimesOnePointThree, 5.67793)]
    [InlineData(AlertDefinition.ThreeMonthAverageRateTimesOnePointThree, 5.58346)]
    [InlineData(AlertDefinition.PooledPlusTwoPoissonDeviations, 8.9890)]
    [InlineData(AlertDefinition.PooledPlusThreePoissonDeviations, 11.2279)]
    public void Printed_levels(AlertDefinition definition, double level)
    {
        var months = Months(ReferenceCase.Load("alert-levels-twelve-months"));
        Assert.Equal(level, AlertLevel.Compute(definition, months, 900).Value.PerThousandHours, 4);
    }

    [Fact] // The parts of those levels, same source: mean 4.41704, pooled 4.51128, deviations 1.35447 and 1.29681, three months 4.36764.
    public void Printed_parts_of_the_levels()
    {
        var months = Months(ReferenceCase.Load("alert-levels-twelve-months"));
        double Level(AlertDefinition definition) => AlertLevel.Compute(definition, months, 900).Value.PerThousandHours;
        var deviation = Level(AlertDefinition.MeanPlusThreeDeviations) - Level(AlertDefinition.MeanPlusTwoDeviations);
        var mean = Level(AlertDefinition.MeanPlusTwoDeviations) - 2 * deviation;
        Assert.Equal(1.35447, deviation, 4);
        Assert.Equal(4.41704, mean, 4);
        Assert.Equal(1.29681, (Level(AlertDefinition.MeanPlusTwoPopulationDeviations) - mean) / 2, 4);
        Assert.Equal(4.36764, Level(AlertDefinition.ThreeMonthPooledRateTimesOnePointThree) / 1.3, 4);
        Assert.Equal(
            4.51128,
            3 * Level(AlertDefinition.PooledPlusTwoPoissonDeviations) - 2 * Level(AlertDefinition.PooledPlusThreePoissonDeviations), 4);
    }

    [Fact]
    public void Too_few_months_are_a_typed_reason()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, AlertLevel.Compute(AlertDefinition.MeanPlusTwoDeviations, [new(0, 0)], 900).Reason?.Kind);
        Assert.Equal(NotEstimableKind.TooFewEvents, AlertLevel.Compute(AlertDefinition.MeanPlusTwoDeviations, [new(1, 100)], 900).Reason?.Kind);
    }

    private static List<AlertMonth> Months(ReferenceCase reference) =>
        [.. reference.Counts("events").Zip(reference.Column("hours"), (e, h) => new AlertMonth(e, h))];
}
