using System.Runtime.InteropServices;

namespace FleetTrend.Statistics;

/// <summary>A number with its interval.</summary>
/// <param name="Value">The point estimate.</param>
/// <param name="Interval">Its interval; an end that the data do not limit is infinite or the edge of the range.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct IntervalEstimate(double Value, Interval Interval);
