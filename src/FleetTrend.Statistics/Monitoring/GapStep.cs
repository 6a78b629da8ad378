using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>One gap between events in a cumulative sum.</summary>
/// <param name="Gap">Hours since the event before.</param>
/// <param name="Sum">The sum after the gap, hours.</param>
/// <param name="Signals">Whether the sum has reached the limit.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct GapStep(double Gap, double Sum, bool Signals);
