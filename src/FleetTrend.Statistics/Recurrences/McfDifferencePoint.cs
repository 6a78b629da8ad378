using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>Second mean cumulative function less the first, from one event age of either up to the next.</summary>
/// <param name="Time">Event age, hours.</param>
/// <param name="Difference">Second less first, events per unit.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="Lower">Lower pointwise limit.</param>
/// <param name="Upper">Upper pointwise limit.</param>
/// <param name="BandLower">Lower edge of the band that holds at all ages at once.</param>
/// <param name="BandUpper">Upper edge of that band.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct McfDifferencePoint(
    double Time, double Difference, double StandardError, double Lower, double Upper, double BandLower, double BandUpper);
