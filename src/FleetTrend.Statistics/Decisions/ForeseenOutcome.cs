using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Decisions;

/// <summary>A chance that was stated, and what then happened.</summary>
/// <param name="Chance">The chance, in [0, 1].</param>
/// <param name="Happened">Whether it happened.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ForeseenOutcome(double Chance, bool Happened);
