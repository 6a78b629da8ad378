using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Rates;

/// <summary>Of a unit (aircraft): how many of the things looked at had it.</summary>
/// <param name="Events">Things that had it, zero or more.</param>
/// <param name="Trials">Things looked at, not below the events.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ClusterCount(int Events, int Trials);
