using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>A function of one variable at one point, with its first and second derivative.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DerivativesAt(double Value, double First, double Second);
