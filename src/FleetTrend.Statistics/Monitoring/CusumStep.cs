using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>One look in a cumulative sum.</summary>
/// <param name="Observed">Events found at the look.</param>
/// <param name="Expected">Events expected since the look before.</param>
/// <param name="Sum">The sum after the look (before it is set back where the look signals).</param>
/// <param name="Signals">Whether the sum has reached the limit.</param>
/// <param name="Excess">Events found less events expected since the first look, whatever the sum was set back to.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CusumStep(int Observed, double Expected, double Sum, bool Signals, double Excess);
