using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Records.Tests.Layouts;

/// <summary>A kind names only conditions that make sense there, and two kinds are the same where they say the same.</summary>
public sealed class LocationKindTests
{
    [Fact]
    public void A_condition_that_makes_no_sense_there_or_stands_twice_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Kind(conditions: []));
        Assert.Throws<ArgumentException>(() => Kind(conditions: [Condition.Crack, Condition.Crack]));
        Assert.Throws<ArgumentException>(() => Kind(failures: [Condition.Wear]));
        Assert.Throws<ArgumentException>(() => Kind(watched: [Condition.Wear]));
        Assert.Throws<ArgumentException>(() => Kind(checks: [new(Condition.Wear, ["Look."])]));
        Assert.Throws<ArgumentException>(() => Kind(checks: [new(Condition.Crack, ["Look."]), new(Condition.Crack, ["Again."])]));
    }

    [Fact]
    public void A_kind_is_a_part_with_a_life_where_a_condition_ends_it()
    {
        Assert.False(Kind().HasLife);
        Assert.True(Kind(failures: [Condition.Crack]).HasLife);
    }

    [Fact]
    public void Two_kinds_are_equal_where_all_that_they_say_is_equal()
    {
        Assert.Equal(Kind(), Kind());
        Assert.Equal(Kind().GetHashCode(), Kind().GetHashCode());
        LocationKind[] others =
        [
            Kind(conditions: [Condition.Crack, Condition.LeakTrace]), Kind(failures: [Condition.Crack]), Kind(watched: [Condition.Crack]),
            Kind(checks: [new(Condition.Crack, ["Look."])]), Kind(baseChecks: ["Look."]),
        ];
        Assert.All(others, other => Assert.NotEqual(Kind(), other));
        Assert.Equal(["Look."], Kind(checks: [new(Condition.Crack, ["Look."])]).ChecksFor(Condition.Crack));
        Assert.Null(Kind().ChecksFor(Condition.Crack));
    }

    private static LocationKind Kind(
        Condition[]? conditions = null, Condition[]? failures = null, Condition[]? watched = null, ConditionChecks[]? checks = null,
        string[]? baseChecks = null) =>
        new("ring", "Ring", "Look.", null, conditions ?? [Condition.Crack], failures ?? [], watched ?? [], checks ?? [], baseChecks ?? []);
}
