using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Probability mass in one innermost interval, age in (<see cref="Lower"/>, <see cref="Upper"/>] (a single age where both are equal);
/// where inside it the mass lies, the data do not say.
/// </summary>
/// <param name="Lower">Hours, excluded unless equal to the upper end.</param>
/// <param name="Upper">Hours, included; infinite for the mass beyond the last good look.</param>
/// <param name="Mass">Probability, above 0.</param>
/// <param name="Cdf">Probability of having failed by the upper end.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TurnbullMass(double Lower, double Upper, double Mass, double Cdf);
