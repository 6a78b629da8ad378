using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>What one unit adds to the score of a growth.</summary>
/// <param name="Events">Its events.</param>
/// <param name="EventSlope">Sum over its events of the slope of the logarithm of the mean in their span.</param>
/// <param name="EventBend">Sum of the second derivatives.</param>
/// <param name="LogMean">Logarithm of the mean over all of its spans, for a level of one.</param>
/// <param name="First">Slope of that logarithm.</param>
/// <param name="Square">Mean over its spans, as the law weighs them, of the squared slope.</param>
/// <param name="Bend">Likewise of the second derivative of the logarithm.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct GrowthSlopes(int Events, double EventSlope, double EventBend, double LogMean, double First, double Square,
    double Bend);
