using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Decisions;

/// <summary>Hours that an aircraft flies until a horizon.</summary>
/// <param name="Mean">In the mean, zero or more.</param>
/// <param name="Spread">Standard deviation of what it then flies and of when its looks come, hours, zero or more.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct HoursAhead(double Mean, double Spread = 0);
