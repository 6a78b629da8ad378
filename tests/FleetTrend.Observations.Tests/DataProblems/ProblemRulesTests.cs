using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Tests.DataProblems;

public sealed class ProblemRulesTests
{
    [Fact]
    public void Every_kind_says_its_rule() => Assert.All(Enum.GetValues<DataProblemKind>(), kind => Assert.NotEmpty(ProblemRules.Find(kind)));

    [Fact]
    public void Identity_is_of_kind_aircraft_aspect_and_records_and_not_of_words_revisions_or_order()
    {
        var day = new DateOnly(2026, 1, 2);
        RecordKey a = new("cards", "a", 1), b = new("cards", "b", 1);
        var problem = new DataProblem(DataProblemKind.HoursBackwards, "ZZ-A01", day, "10.0 h", [a, b]);
        Assert.Equal(problem.Identity, (problem with { Description = "other", Date = day.AddDays(3), Evidence = [b with { Revision = 2 }, a] }).Identity);
        DataProblem[] others =
        [
            problem with { Kind = DataProblemKind.TooManyHoursPerDay },
            problem with { Registration = "ZZ-A02" },
            problem with { OtherRegistration = "ZZ-A02" },
            problem with { Aspect = "meter offset" },
            problem with { Evidence = [a] },
            problem with { Subject = [b] },
        ];
        Assert.Equal(7, others.Append(problem).Select(p => p.Identity).Distinct().Count());
    }
}
