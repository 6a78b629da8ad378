using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Rules;
using static FleetTrend.Intake.Tests.Rules.RefusalAssert;
using PracticeChange = FleetTrend.Records.Practices.PracticeChange;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Rules of practice changes: protos/fleettrend/v1/practice.proto.</summary>
public sealed class PracticeRulesTests
{
    [Fact]
    public void What_and_the_day_are_enough()
    {
        var record = new Record { Key = Valid.Key(), PracticeChange = new() { ChangeDate = Valid.Day(), What = "a mirror for every look" } };
        var parsed = Assert.IsType<PracticeChange>(RecordRules.Parse(record, Valid.Known()).Content);
        Assert.Equivalent(new PracticeChange { ChangeDate = new(2026, 2, 3), What = "a mirror for every look" }, parsed, strict: true);
    }

    [Fact]
    public void Locations_are_in_order_and_an_absent_field_widens_what_it_is_about()
    {
        var whole = Assert.IsType<PracticeChange>(RecordRules.Parse(Valid.PracticeChange(), Valid.Known()).Content);
        Assert.Equal([Valid.Weld, Valid.Gasket], whole.Locations); // sent the other way round
        Assert.True(whole.IsAbout("North", "trainer-four", Valid.Gasket));
        Assert.False(whole.IsAbout("South", "trainer-four", Valid.Gasket));
        Assert.False(whole.IsAbout("North", "tourer-six", Valid.Gasket));
        Assert.False(whole.IsAbout("North", "trainer-four", "exhaust/cyl-4/gasket"));
        Assert.True((whole with { Base = null, TypeGroup = null, Locations = [] }).IsAbout("South", "tourer-six", "exhaust/cyl-4/gasket"));
    }

    [Fact]
    public void What_is_required() => Refused(Valid.PracticeChange(p => p.What = ""), Reasons.FieldRequired, "practice_change.what", "");

    [Fact]
    public void The_day_is_required() => Refused(Valid.PracticeChange(p => p.ChangeDate = null), Reasons.FieldRequired, "practice_change.change_date", "");

    [Theory]
    [InlineData("Nort", "BASE_NOT_KNOWN")]
    [InlineData("north", "BASE_SPELLED_OTHERWISE")]
    [InlineData(" North", "TEXT_NOT_PRINTABLE")]
    public void The_base_is_one_of_a_registered_aircraft(string atBase, string reason) =>
        Refused(Valid.PracticeChange(p => p.Base = atBase), Named(reason), "practice_change.base", atBase);

    [Theory]
    [InlineData("tourer-six", "TYPE_GROUP_NOT_REGISTERED")]
    [InlineData("Trainer", "PATTERN_MISMATCH")]
    public void The_type_group_is_registered(string group, string reason) =>
        Refused(Valid.PracticeChange(p => p.TypeGroup = group), Named(reason), "practice_change.type_group", group);

    [Theory]
    [InlineData("trainer-four")]
    [InlineData("")]
    public void A_location_is_one_of_a_layout(string group) => Refused(
        Valid.PracticeChange(p => (p.TypeGroup, p.Locations[0].Location) = (group, "exhaust/cyl-9/gasket")), Reasons.LocationNotInLayout,
        "practice_change.locations[0].location", "exhaust/cyl-9/gasket");

    [Fact]
    public void No_location_stands_twice() => Refused(
        Valid.PracticeChange(p => p.Locations[1].Location = Valid.Gasket), Reasons.DuplicateLine, "practice_change.locations[1].location", Valid.Gasket);

    [Fact]
    public void At_most_500_locations() => Refused(
        Valid.PracticeChange(p => p.Locations.AddRange(Enumerable.Repeat(new ChangedLocation { Location = Valid.Gasket }, 499))), Reasons.TooManyItems,
        "practice_change.locations", "501");

    private static Reason Named(string name) => Reasons.All.Single(reason => reason.Name == name);
}
