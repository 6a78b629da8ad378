using FleetTrend.Contracts.V1;
using FleetTrend.Records.Layouts;
using Layout = FleetTrend.Contracts.V1.Layout;
using Location = FleetTrend.Contracts.V1.Location;

namespace FleetTrend.Synthetic.Tests;

public class SyntheticOperatorTests
{
    private static readonly DateOnly LastDate = new(2026, 3, 31);
    private static readonly OperatorSize Size = new(Aircraft: 60, Years: 2, TypeGroups: 3);

    [Fact]
    public void The_same_arguments_give_the_same_records() =>
        Assert.Equal(Generate(7, Size).Records(), Generate(7, Size).Records());

    [Fact]
    public void The_records_can_be_read_twice()
    {
        var fleet = Generate(7, Size);
        Assert.Equal(fleet.Records(), fleet.Records());
    }

    [Fact]
    public void Another_seed_gives_other_records() =>
        Assert.NotEqual(Generate(7, Size).Records(), Generate(8, Size).Records());

    [Fact]
    public void All_aircraft_come_first_and_inspections_in_order_of_their_days()
    {
        var records = Generate(7, Size).Records().ToList();
        Assert.All(records.Take(Size.Aircraft), r => Assert.NotNull(r.Aircraft));
        Assert.All(records.Skip(Size.Aircraft), r => Assert.Null(r.Aircraft));
        var days = records.Where(r => r.Inspection is not null).Select(r => r.Inspection.InspectionDate.ToDateTime()).ToList();
        Assert.Equal(days.Order(), days);
        Assert.InRange(DateOnly.FromDateTime(days[^1]), LastDate.AddDays(-14), LastDate);
    }

    [Fact]
    public void Every_type_group_has_its_share_of_the_aircraft()
    {
        var fleet = Generate(7, Size);
        var groups = fleet.Records().Take(Size.Aircraft).CountBy(r => r.Aircraft.Assignments.Single().TypeGroup);
        Assert.Equal(fleet.TypeGroups.Select(g => g.Name).Order(), groups.Select(g => g.Key).Order());
        Assert.All(groups, g => Assert.Equal(Size.Aircraft / Size.TypeGroups, g.Value));
    }

    [Fact]
    public void The_number_of_type_groups_changes_nothing_else()
    {
        var one = Generate(7, Size with { TypeGroups = 1 }).Records().ToList();
        var many = Generate(7, Size with { TypeGroups = 10 }).Records().ToList();
        foreach (var aircraft in one.Concat(many).Select(r => r.Aircraft).OfType<Aircraft>())
            aircraft.Assignments.Single().TypeGroup = "any";
        Assert.Equal(one, many);
    }

    private static SyntheticOperator Generate(int seed, OperatorSize size)
    {
        var shipped = ShippedLayouts.All.Single(l => l.Name == SyntheticOperator.LayoutName);
        var layout = new Layout { Name = shipped.Name, Title = shipped.Title };
        layout.Locations.AddRange(shipped.Locations.Select(l => new Location { Path = l.Path, Kind = l.Kind.Name }));
        return new SyntheticOperator(seed, size, LastDate, layout);
    }
}
