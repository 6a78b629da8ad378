using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Changes;

/// <summary>One finding of a unit.</summary>
/// <param name="Period">Period of the look that made it.</param>
/// <param name="Location">Index of the location.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct UnitFinding(int Period, int Location);
