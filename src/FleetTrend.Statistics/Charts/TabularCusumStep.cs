using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Charts;

/// <summary>One value in a pair of cumulative sums.</summary>
/// <param name="Value">The value.</param>
/// <param name="Upper">The sum that rises when values lie above the target.</param>
/// <param name="Lower">The sum that rises when values lie below the target.</param>
/// <param name="Signals">Whether either sum exceeds the limit.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TabularCusumStep(double Value, double Upper, double Lower, bool Signals);
