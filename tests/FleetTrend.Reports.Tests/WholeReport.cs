using FleetTrend.Reports.Weekly;

namespace FleetTrend.Reports.Tests;

/// <summary>The whole of a report, which pages show, as a mail of it would be; the mail itself says the brief (BriefTests).</summary>
internal static class WholeReport
{
    public static RenderedReport RenderWhole(this WeeklyReport report) => (report with { Document = report.Document with { Brief = [], Preview = "" } }).Render();
}
