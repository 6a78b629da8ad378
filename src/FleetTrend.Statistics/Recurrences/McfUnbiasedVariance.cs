namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Nelson's unbiased variance of a mean cumulative function, kept up along the ages. Each unit's weighted past is the sum over its events
/// of one over the units at risk; the covariance of a step with all steps before it is the covariance, over the units at risk, of their
/// events at the age and their weighted pasts.
/// </summary>
/// <remarks>Source: Nelson 1995, Technometrics 37 (from memory; checked against its double sum written out in R).</remarks>
internal sealed class McfUnbiasedVariance(int units)
{
    private readonly double[] past = new double[units];
    private double sumPast;

    /// <summary>The variance; not a number from an age on at which one unit was watched alone.</summary>
    public double Value { get; private set; }

    public void Enter(int unit) => sumPast += past[unit];

    public void Exit(int unit) => sumPast -= past[unit];

    /// <summary>The events of one age.</summary>
    /// <param name="owners">Units that had them, repeated for several events of one unit.</param>
    /// <param name="atRisk">Units at risk.</param>
    public void Step(ReadOnlySpan<int> owners, int atRisk)
    {
        if (atRisk < 2)
        {
            Value = double.NaN;
            return;
        }

        double n = atRisk;
        var mean = owners.Length / n;
        var (squares, withPast) = (0.0, 0.0);
        var byUnit = owners.ToArray();
        Array.Sort(byUnit);
        for (var first = 0; first < byUnit.Length;)
        {
            var last = first;
            while (last < byUnit.Length && byUnit[last] == byUnit[first])
                last++;
            double count = last - first;
            squares += count * count;
            withPast += count * past[byUnit[first]];
            first = last;
        }

        Value += (squares - n * mean * mean) / ((n - 1) * n) + 2 * (withPast - mean * sumPast) / (n - 1);
        foreach (var unit in byUnit)
        {
            past[unit] += 1 / n;
            sumPast += 1 / n;
        }
    }
}
