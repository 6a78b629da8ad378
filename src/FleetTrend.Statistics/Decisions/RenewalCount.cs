namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// Distribution of the number of failures at one position in the hours ahead, each failed part being renewed at once: the first
/// from the conditional life, later ones from a new part's, by convolution over a fine division of the hours.
/// </summary>
internal static class RenewalCount
{
    private const int Bins = 128;
    private const int MostFailures = 400;
    private const double Negligible = 1e-10;

    public static CountDistribution Compute(PartInUse part, WeibullLife life)
    {
        if (part.HoursAhead == 0)
            return CountDistribution.Zero;
        var atLeast = new List<double> { 1, life.FailsWithin(part.Age, part.HoursAhead) };
        var width = part.HoursAhead / Bins;
        var mass = Masses(x => life.FailsWithin(part.Age, x), width);
        double[]? renewed = null;
        double[]? failsByEnd = null;
        while (atLeast[^1] > Negligible && atLeast.Count < MostFailures)
        {
            // A failure in a bin counts at the bin's middle; what a new part does from there on is counted in whole bins.
            renewed ??= Masses(x => life.FailsWithin(0, x), width);
            failsByEnd ??= [.. Enumerable.Range(0, Bins).Select(j => life.FailsWithin(0, part.HoursAhead - (j + 0.5) * width))];
            var next = 0.0;
            for (var j = 0; j < Bins; j++)
                next += mass[j] * failsByEnd[j];
            atLeast.Add(Math.Min(next, atLeast[^1]));
            if (next > Negligible)
                mass = Convolved(mass, renewed);
        }
        atLeast.Add(0);
        var chances = new double[atLeast.Count - 1];
        for (var k = 0; k < chances.Length; k++)
            chances[k] = atLeast[k] - atLeast[k + 1];
        return CountDistribution.FromChances(chances);
    }

    private static double[] Masses(Func<double, double> failsBy, double width)
    {
        var mass = new double[Bins];
        var before = 0.0;
        for (var j = 0; j < Bins; j++)
        {
            var by = failsBy((j + 1) * width);
            mass[j] = by - before;
            before = by;
        }
        return mass;
    }

    /// <summary>Two failures in the middles of bins i and j add to the border of bins i + j and i + j + 1: half to each.</summary>
    private static double[] Convolved(double[] first, double[] second)
    {
        var sum = new double[Bins];
        for (var i = 0; i < Bins; i++)
        {
            for (var j = 0; i + j < Bins; j++)
            {
                var half = first[i] * second[j] / 2;
                sum[i + j] += half;
                if (i + j + 1 < Bins)
                    sum[i + j + 1] += half;
            }
        }
        return sum;
    }
}
