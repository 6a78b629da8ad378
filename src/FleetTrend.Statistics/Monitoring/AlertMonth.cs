using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>Events and hours of one month.</summary>
/// <param name="Events">Events counted.</param>
/// <param name="Hours">Hours flown.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct AlertMonth(int Events, double Hours);
