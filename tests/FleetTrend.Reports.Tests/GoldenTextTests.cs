using System.Runtime.CompilerServices;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>
/// The text of whole mails and reports of an invented fleet beside the one that was read and agreed on, so that a change of words is seen in review. The
/// numbers in them are made up; that they are right is checked elsewhere.
/// </summary>
/// <remarks>
/// With FLEETTREND_WRITE_GOLDEN=1 the files are written anew and the test fails, so that nobody leaves it set: read the difference before it is committed.
/// </remarks>
public sealed class GoldenTextTests
{
    private const string WriteVariable = "FLEETTREND_WRITE_GOLDEN";

    public static TheoryData<string> Names => ["whole-fleet", "one-base", "nothing-to-pull-in", "two-aircraft"];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_text_is_the_one_that_was_read(string name)
    {
        var report = Compose(name);
        var text = $"Subject: {report.Subject}\n\n{report.Render().Text}\n======== The whole report, as the pages have it ========\n\n{report.RenderWhole().Text}";
        var file = Path.Combine(Folder(), name + ".txt");
        if (Environment.GetEnvironmentVariable(WriteVariable) == "1")
        {
            File.WriteAllText(file, text);
            Assert.Fail($"{file} was written anew: read what changed, then run without {WriteVariable}.");
        }

        Assert.Equal(File.ReadAllText(file), text);
    }

    private static WeeklyReport Compose(string name) => name switch
    {
        "whole-fleet" => WeeklyReport.Compose(
            Snapshot() with { Repairs = [RepairsSectionTests.Trend()], PartNumbers = [PartNumbersSectionTests.Trend()] }, WeekBefore(),
            AllFlags(ReportScope.WholeFleet)),
        "one-base" => WeeklyReport.Compose(Snapshot(), WeekBefore(), AllFlags(new ReportScope(Home))),
        "nothing-to-pull-in" => WeeklyReport.Compose(Quiet(), Quiet(), Inputs(ReportScope.WholeFleet)),
        "two-aircraft" => WeeklyReport.Compose(
            Quiet() with { Fleet = [Line(1), Line(2)], Rates = [], Recurrences = [], PartLives = [], Levels = [] }, null, Inputs(ReportScope.WholeFleet)),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Not a golden report."),
    };

    private static TrendSnapshot Quiet() => Snapshot() with { Flags = [], Repeats = [], RecurrenceContrasts = [], DataProblems = [] };

    private static string Folder([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "Golden");
}
