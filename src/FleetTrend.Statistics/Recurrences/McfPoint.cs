using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>The mean cumulative function from one event age up to the next.</summary>
/// <param name="Time">Event age, hours.</param>
/// <param name="AtRisk">Units under observation at this age (start &lt; age &lt;= stop).</param>
/// <param name="Events">Events at this age.</param>
/// <param name="Value">Mean number of events per unit up to and including this age.</param>
/// <param name="StandardError">Standard error of the value.</param>
/// <param name="Lower">Lower pointwise limit.</param>
/// <param name="Upper">Upper pointwise limit.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct McfPoint(
    double Time, int AtRisk, int Events, double Value, double StandardError, double Lower, double Upper);
