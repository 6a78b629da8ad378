using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>A unit that was above its alert level.</summary>
/// <param name="From">The month with which the alert began, counted from 0.</param>
/// <param name="To">The first month after it that was not above; null where there is none yet.</param>
/// <param name="Rate">The rate that was above, events per 1,000 hours.</param>
/// <param name="Level">The level then, events per 1,000 hours.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct AlertCall(int From, int? To, double Rate, double Level);
