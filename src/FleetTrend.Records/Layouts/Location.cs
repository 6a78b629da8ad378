namespace FleetTrend.Records.Layouts;

/// <summary>One place that can be looked at.</summary>
/// <param name="Path">System, sub-assembly and place, such as <c>exhaust/cyl-3/flange-weld</c>; it has one kind in every layout.</param>
/// <param name="Kind">What it is.</param>
/// <param name="LookFor">One line on what to look for; empty takes the kind's line.</param>
/// <param name="JascCode">FAA Joint Aircraft System/Component code, four digits, or null; it stops at assembly level.</param>
public sealed record Location(string Path, LocationKind Kind, string LookFor = "", string? JascCode = null);
