using FleetTrend.Observations.DataProblems;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>Marks that a hand or an eye takes for each other. Common practice, no source: O and 0, I and 1, swapped letters, a hyphen left out.</summary>
public sealed class LookAlikeMarksTests
{
    [Theory]
    [InlineData("ZZ-AO1", "ZZ-A01", true)] // letter O, figure 0
    [InlineData("ZZ-AI7", "ZZ-A17", true)] // letter I, figure 1
    [InlineData("ZZ-AIO", "ZZ-A10", true)] // both
    [InlineData("ZZA01", "ZZ-A01", true)] // no hyphen
    [InlineData("ZZ-ABC", "ZZ-BAC", true)] // A and B swapped
    [InlineData("ZZ-ABO1", "ZZ-BA01", true)] // swapped, and O for 0
    [InlineData("ZA-ZB1", "ZZ-AB1", true)] // swapped across the hyphen
    [InlineData("ZZ-A12", "ZZ-A21", false)] // figures swapped: two numbers of one fleet
    [InlineData("ZZ-ABC", "ZZ-CBA", false)] // not neighbours
    [InlineData("ZZ-ABCD", "ZZ-BADC", false)] // two swaps
    [InlineData("ZZ-A01", "ZZ-B01", false)]
    [InlineData("ZZ-A01", "ZZ-A011", false)]
    public void A_pair_is_listed_once_with_both_marks(string one, string other, bool alike)
    {
        var fleet = Fleet(1000, new InventedAircraft(one).History, new InventedAircraft(other).History);
        Assert.All(fleet, a => Assert.Empty(a.Problems));
        var problems = Observe.OtherProblems(fleet.Select(a => a.Mark), []);
        Assert.Equal(alike ? 1 : 0, problems.Count);
        foreach (var problem in problems)
        {
            Assert.Equal(DataProblemKind.LookAlikeMarks, problem.Kind);
            Assert.Equal(new[] { one, other }.Order(StringComparer.Ordinal), [problem.Registration, problem.OtherRegistration!]);
            Assert.Equal(2, problem.Evidence.Count);
        }
    }

    [Fact]
    public void The_order_of_the_fleet_means_nothing_and_every_pair_of_three_is_listed()
    {
        string[] marks = ["ZZ-A01", "ZZ-AO1", "ZZA01"];
        var ahead = Fleet(1000, marks.Select(m => new InventedAircraft(m).History));
        var back = Fleet(1000, marks.Reverse().Select(m => new InventedAircraft(m).History));
        Assert.Equal(3, Identities(ahead).Count());
        Assert.Equal(Identities(ahead), Identities(back));

        static IEnumerable<string> Identities(IEnumerable<AircraftObservations> fleet) =>
            Observe.OtherProblems(fleet.Select(a => a.Mark), []).Select(p => p.Identity).Order(StringComparer.Ordinal);
    }
}
