using FleetTrend.Reports.Text;
using FleetTrend.Reports.Weekly;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>A report of one type group says what is known of it, and nothing of the others.</summary>
public sealed class TypeGroupReportTests
{
    private const string Other = "tourer-six";

    [Fact]
    public void It_says_of_its_type_group_what_the_report_of_the_fleet_says_of_it()
    {
        var fleet = Whole(ReportScope.WholeFleet);
        var ofGroup = Whole(new ReportScope(null, Trainer));
        Assert.Equal(fleet.Replace("THE WHOLE FLEET", Trainer.ToUpperInvariant(), StringComparison.Ordinal), ofGroup);
        Assert.Equal($"1 new flag, {Trainer}: ZZ-A07 cracks again at cyl 3 flange weld", Compose(new ReportScope(null, Trainer), Raised(RepeatFlag())).Subject);
    }

    [Fact]
    public void It_leaves_out_aircraft_flags_and_problems_of_other_type_groups()
    {
        var report = Compose(new ReportScope(null, Other), AllFlags(ReportScope.WholeFleet).Flags);
        Assert.Equal($"No aircraft on record, {Other}", report.Subject);
        var said = TextReport.Render(report.Document with { Sections = [.. report.Document.Brief, .. report.Document.Sections] });
        Assert.DoesNotContain("ZZ-A", said, StringComparison.Ordinal);
        Assert.Empty(report.Plots);
    }

    [Fact]
    public void One_aircraft_of_another_type_group_is_not_in_it_and_is_all_of_the_other()
    {
        var now = Snapshot();
        now = now with { Fleet = [.. now.Fleet.Select(l => l.Registration == Tail(7) ? l with { TypeGroup = Other } : l)] };
        Assert.Equal(now.Fleet.Count - 1, now.OfTypeGroup(Trainer).Fleet.Count);
        Assert.Equal([Tail(7)], now.OfTypeGroup(Other).Fleet.Select(l => l.Registration));
        Assert.All(now.OfTypeGroup(Other).DataProblems, p => Assert.Contains(Tail(7), new[] { p.Registration, p.OtherRegistration }));
    }

    private static string Whole(ReportScope scope)
    {
        var report = Compose(scope, AllFlags(scope).Flags);
        return TextReport.Render(report.Document);
    }

    private static WeeklyReport Compose(ReportScope scope, params IReadOnlyList<FlagLine> flags) =>
        WeeklyReport.Compose(Snapshot() with { DataProblems = [] }, WeekBefore() with { DataProblems = [] }, Inputs(scope, [.. flags]));
}
