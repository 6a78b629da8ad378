using FleetTrend.Statistics.Monitoring;

namespace FleetTrend.Statistics.Tests.Monitoring;

public sealed class AlertReplayTests
{
    // A year of 100 h a month with 1, 0, 1, 0 ... events: six monthly rates of 10 and six of 0 per 1,000 h. Mean 5, deviation sqrt(12 * 25 / 11) = 5.2223.
    private static readonly int[] QuietYear = [1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0];

    [Fact] // By hand: the 13th month has 2 events, 20 per 1,000 h: above 5 + 2 * 5.2223 = 15.445, not above 5 + 3 * 5.2223 = 20.667.
    public void A_month_above_the_mean_plus_two_deviations_is_called_until_a_month_is_not()
    {
        var call = Assert.Single(Calls("mean-2-sd", [.. QuietYear, 2, 0, 0]));
        Assert.Equal((12, (int?)13), (call.From, call.To));
        Assert.Equal(20, call.Rate, 10);
        Assert.Equal(15.4447, call.Level, 4);
        Assert.Empty(Calls("mean-3-sd", [.. QuietYear, 2, 0, 0]));
        Assert.Equal((12, null), Span(Assert.Single(Calls("mean-2-sd", [.. QuietYear, 2]))));
    }

    [Fact]
    // By hand: before the 14th month stand five months of 10, six of 0 and one of 20: mean 70 / 12, deviation sqrt((900 - 4900 / 12) / 11) = 6.6856;
    // level 19.205.
    public void Twelve_months_roll_and_two_in_a_row_are_called_with_the_second()
    {
        Assert.Equal((13, null), Span(Assert.Single(Calls("mean-2-sd-twice", [.. QuietYear, 2, 4]))));
        Assert.Equal(19.2045, Assert.Single(Calls("mean-2-sd-twice", [.. QuietYear, 2, 4])).Level, 4);
        Assert.Empty(Calls("mean-2-sd-twice", [.. QuietYear, 2, 0, 2]));
    }

    [Fact] // By hand: the level of the year before, 15.445, stands all year, also after a month of 40 that would raise one that rolls.
    public void A_level_of_the_calendar_year_before_stands_from_January_to_December()
    {
        Assert.Equal([(12, 13), (14, (int?)15)], Calls("year-mean-2-sd", [.. QuietYear, 4, 0, 2, 0]).Select(Span));
        Assert.Equal([(12, (int?)13)], Calls("mean-2-sd", [.. QuietYear, 4, 0, 2, 0]).Select(Span)); // 7.5 + 2 * 11.38 = 30.3 by then
        Assert.Empty(Calls("year-mean-2-sd", [.. QuietYear, 4, 0, 2, 0], firstMonth: 7)); // no whole calendar year lies before
        Assert.Equal([(18, (int?)19)], Calls("year-mean-2-sd", [.. QuietYear, 1, 0, 1, 0, 1, 0, 2, 0], firstMonth: 7).Select(Span));
    }

    [Fact] // By hand: windows of three months hold 2 or 1 events in 300 h, five of each: 5 per 1,000 h, times 1.3 = 6.5. Months 11 to 13 hold 1, 0 and 2: 10.
    public void Three_months_are_judged_by_a_three_month_level()
    {
        var call = Assert.Single(Calls("three-month-pooled-1.3", [.. QuietYear, 2, 0, 0, 0]));
        Assert.Equal((12, (int?)13), Span(call)); // 0, 2, 0 is 6.67; by then 16 events in ten windows of 300 h, times 1.3, are 6.93
        Assert.Equal(10, call.Rate, 10);
        Assert.Equal(6.5, call.Level, 10);
        Assert.Equal(12, Assert.Single(Calls("three-month-average-1.3", [.. QuietYear, 2, 0, 0, 0])).From); // months of equal hours: the same
    }

    [Fact]
    // By hand: 0.005 an hour, 0.5 in the 100 h of the month. 5 + 2 * sqrt(0.005 / 100) * 1000 = 19.14 is below 20, 5 + 3 of them = 26.21 above. Of a
    // Poisson count of mean 0.5, 2 or more come with chance 0.0902 and 3 or more with 0.0144: three reach the exact level, two do not.
    public void Poisson_levels_look_at_the_units_own_hours()
    {
        Assert.Equal(19.1421, Assert.Single(Calls("poisson-2-sd", [.. QuietYear, 2])).Level, 4);
        Assert.Empty(Calls("poisson-3-sd", [.. QuietYear, 2]));
        Assert.Empty(Calls("poisson-exact", [.. QuietYear, 2]));
        Assert.Equal(30, Assert.Single(Calls("poisson-exact", [.. QuietYear, 3])).Level, 10);
    }

    [Fact]
    // By hand: a year of 1,200 h, five units with 1 event and one with 10. Mean 15 / 7.2 = 2.0833 per 1,000 h, deviation 7.5 / sqrt(6) = 3.0619:
    // 8.3333 is above 2.0833 + 6.1237 = 8.2071, and below 2.0833 + 9.1856.
    public void A_unit_far_above_its_like_is_called_once_it_has_twelve_months()
    {
        var units = Enumerable.Range(0, 6).Select(u => Months([u == 5 ? 10 : 1, .. new int[11]])).ToArray();
        var calls = new AlertReplay(1, units).Calls(Practice("like-mean-2-sd"));
        Assert.Equal([0, 0, 0, 0, 0, 1], calls.Select(c => c.Count));
        Assert.Equal((11, null), Span(calls[5][0]));
        Assert.Equal(8.2071, calls[5][0].Level, 4);
        Assert.All(new AlertReplay(1, units).Calls(Practice("like-mean-3-sd")), Assert.Empty);
        AlertMonth[] late = [new(0, 0), .. Months([10, .. new int[10]])]; // eleven months are no year
        Assert.All(new AlertReplay(1, [.. units[..5], late]).Calls(Practice("like-mean-2-sd")), Assert.Empty);
    }

    [Fact] // Two units, judged one by one by what both have together: 15.445 again, from 200 h a month.
    public void The_baseline_is_of_all_units_and_a_month_without_hours_is_passed_over()
    {
        int[] twice = [2, 0, 2, 0, 2, 0, 2, 0, 2, 0, 2, 0];
        AlertMonth[] first = [.. Months([.. twice, 0]), new(0, 0), new(2, 100), new(0, 100)];
        var calls = new AlertReplay(1, [first, Months([.. new int[12], 3, 0, 0, 0])]).Calls(Practice("mean-2-sd"));
        Assert.Equal((12, (int?)13), Span(Assert.Single(calls[1])));
        Assert.Equal(15.4447, calls[1][0].Level, 4);
        Assert.Equal((14, (int?)15), Span(Assert.Single(calls[0])));
    }

    [Fact]
    public void Every_rule_has_a_name_of_its_own_words_and_a_source_and_every_definition_has_a_rule()
    {
        Assert.Distinct(AlertPractice.All.Select(p => p.Name));
        Assert.Distinct(AlertPractice.All.Select(p => p.Title));
        Assert.All(AlertPractice.All, p => Assert.True(p.Description.EndsWith('.') && p.Source.Length > 0));
        Assert.Equal(Enum.GetValues<AlertDefinition>().Order(), AlertPractice.All.Select(p => p.Definition).Distinct().Order());
    }

    [Fact]
    public void Months_that_do_not_fit_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new AlertReplay(1, [Months([1]), Months([1, 2])]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AlertReplay(13, [Months([1])]));
        Assert.Empty(new AlertReplay(1, []).Calls(Practice("mean-2-sd")));
    }

    private static IReadOnlyList<AlertCall> Calls(string practice, int[] events, int firstMonth = 1) =>
        new AlertReplay(firstMonth, [Months(events)]).Calls(Practice(practice))[0];

    private static AlertPractice Practice(string name) => AlertPractice.All.Single(p => p.Name == name);

    private static AlertMonth[] Months(int[] events) => [.. events.Select(e => new AlertMonth(e, 100))];

    private static (int From, int? To) Span(AlertCall call) => (call.From, call.To);
}
