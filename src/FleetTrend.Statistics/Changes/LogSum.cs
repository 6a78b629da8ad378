using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Changes;

/// <summary>Sum of numbers given by their logarithms, without overflow.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct LogSum
{
    private double top;
    private double sum;

    public LogSum() => Clear();

    /// <summary>Logarithm of the sum; negative infinity where nothing was added.</summary>
    public readonly double Value => top + Math.Log(sum);

    public void Clear() => (top, sum) = (double.NegativeInfinity, 0);

    public void Add(double log)
    {
        if (double.IsNegativeInfinity(log))
            return;
        if (log <= top)
        {
            sum += Math.Exp(log - top);
        }
        else
        {
            sum = double.IsNegativeInfinity(top) ? 1 : sum * Math.Exp(top - log) + 1;
            top = log;
        }
    }
}
