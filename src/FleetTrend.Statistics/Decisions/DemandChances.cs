namespace FleetTrend.Statistics.Decisions;

/// <summary>Chances of 0, 1, 2 and so on, in an array that grows; what is negligible at its upper end is dropped.</summary>
internal sealed class DemandChances
{
    private double[] chances = new double[16];
    private int length;

    /// <summary>The chances.</summary>
    public double[] ToArray() => chances[..length];

    /// <summary>Nothing for certain.</summary>
    public void SetZero()
    {
        Array.Clear(chances, 0, length);
        (chances[0], length) = (1, 1);
    }

    /// <summary>Adds an independent count, in place: from the upper end down each chance is read before it is written.</summary>
    public void Convolve(ReadOnlySpan<double> other)
    {
        Grow(length + other.Length - 1);
        for (var k = length + other.Length - 2; k >= 0; k--)
        {
            var sum = 0.0;
            for (var j = Math.Max(0, k - length + 1); j < other.Length && j <= k; j++)
                sum += chances[k - j] * other[j];
            chances[k] = sum;
        }

        length += other.Length - 1;
        while (length > 1 && chances[length - 1] < DemandForecast.Negligible)
            chances[--length] = 0;
    }

    /// <summary>Adds chances times a weight.</summary>
    public void AddWeighted(ReadOnlySpan<double> other, double weight)
    {
        Grow(other.Length);
        length = Math.Max(length, other.Length);
        for (var k = 0; k < other.Length; k++)
            chances[k] += weight * other[k];
    }

    /// <summary>Distribution of the sum of two independent counts.</summary>
    public static double[] Sum(double[] first, double[] second)
    {
        var sum = new double[first.Length + second.Length - 1];
        for (var i = 0; i < first.Length; i++)
        {
            for (var j = 0; j < second.Length; j++)
                sum[i + j] += first[i] * second[j];
        }

        return sum;
    }

    /// <summary>The chances as they stand.</summary>
    public ReadOnlySpan<double> AsSpan() => chances.AsSpan(0, length);

    private void Grow(int least)
    {
        if (chances.Length < least)
            Array.Resize(ref chances, Math.Max(least, 2 * chances.Length));
    }
}
