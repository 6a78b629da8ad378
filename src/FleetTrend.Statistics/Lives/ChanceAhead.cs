using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>A chance to fail in the hours ahead, and how it moves with the fitted distribution.</summary>
/// <param name="Chance">The chance.</param>
/// <param name="OfLogScale">Its slope in ln scale.</param>
/// <param name="OfLogShape">Its slope in ln shape.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ChanceAhead(double Chance, double OfLogScale, double OfLogShape);
