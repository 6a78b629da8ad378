using FleetTrend.Reports.Weekly;
using FleetTrend.Store.Reports;

namespace FleetTrend.Results.Reporting;

/// <summary>A report that was put together and is not stored.</summary>
/// <param name="Rendered">What it says.</param>
/// <param name="ToStore">The same in the form in which the store keeps it.</param>
public sealed record ComposedReport(RenderedReport Rendered, StoredReport ToStore);
