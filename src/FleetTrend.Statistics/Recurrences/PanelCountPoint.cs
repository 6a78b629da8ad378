using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>Mean cumulative number of events by a look's age, from counts between looks.</summary>
/// <param name="Age">Age of looks, hours.</param>
/// <param name="Looks">Units looked at at this age.</param>
/// <param name="RawMean">Mean of their cumulative counts, which need not rise.</param>
/// <param name="Value">The rising estimate.</param>
/// <param name="Lower">Lower pointwise limit, by resampling units.</param>
/// <param name="Upper">Upper pointwise limit.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PanelCountPoint(double Age, int Looks, double RawMean, double Value, double Lower, double Upper);
