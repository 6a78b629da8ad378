namespace FleetTrend.Statistics.Norms;

/// <summary>What every adjustment for many tests starts from.</summary>
internal static class Multiplicity
{
    /// <summary>A checked copy.</summary>
    public static double[] Checked(IReadOnlyList<double> pValues)
    {
        ArgumentNullException.ThrowIfNull(pValues);
        double[] p = [.. pValues];
        foreach (var value in p)
        {
            if (!(value is >= 0 and <= 1))
                throw new ArgumentOutOfRangeException(nameof(pValues), value, "A p-value lies in [0, 1].");
        }
        return p;
    }

    /// <summary>Positions of the p-values from the smallest up.</summary>
    public static int[] Ascending(double[] p)
    {
        var order = new int[p.Length];
        for (var i = 0; i < order.Length; i++)
            order[i] = i;
        Array.Sort((double[])p.Clone(), order);
        return order;
    }
}
