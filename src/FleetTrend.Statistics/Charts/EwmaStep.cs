using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Charts;

/// <summary>One value in a chart of moving averages.</summary>
/// <param name="Value">The value.</param>
/// <param name="Average">The moving average after it.</param>
/// <param name="LowerLimit">Exact lower limit of the average at this step.</param>
/// <param name="UpperLimit">Exact upper limit of the average at this step.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct EwmaStep(double Value, double Average, double LowerLimit, double UpperLimit)
{
    /// <summary>Whether the average lies outside the limits of this step.</summary>
    public bool Signals => Average < LowerLimit || Average > UpperLimit;
}
