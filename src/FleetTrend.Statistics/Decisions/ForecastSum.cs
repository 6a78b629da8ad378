namespace FleetTrend.Statistics.Decisions;

/// <summary>Forecasts of counts taken together, where what is not known is shared by those of one kind (parts that live by one law).</summary>
/// <remarks>
/// Of each forecast the variance up to its mean is taken as chance, independent of the others; what is beyond as shared by all forecasts of the
/// kind, as much as can
/// be: a sum of standard deviations. That is the most that the sum can scatter. Limits are those of a Poisson count whose mean varies by a gamma
/// distribution.
/// Source: Feller, An Introduction to Probability Theory, 1968, chapter IX.5 (variance of a sum).
/// </remarks>
public static class ForecastSum
{
    /// <summary>Least and greatest sum that the forecasts leave open.</summary>
    /// <param name="forecasts">What is shared, mean and variance of each.</param>
    /// <param name="confidence">How often the sum lies between them where the forecasts are right, at least; in (0, 1).</param>
    public static (int Lower, int Upper) Limits(IEnumerable<(string Shared, double Mean, double Variance)> forecasts, double confidence)
    {
        Confidences.Check(confidence);
        var (mean, variance) = (0.0, 0.0);
        foreach (var kind in forecasts.GroupBy(f => f.Shared, StringComparer.Ordinal))
        {
            mean += kind.Sum(f => f.Mean);
            variance += kind.Sum(f => Math.Min(f.Mean, f.Variance)) + Math.Pow(kind.Sum(f => Math.Sqrt(Math.Max(0, f.Variance - f.Mean))), 2);
        }

        var (lower, upper) = CountDistribution.WithMoments(mean, variance).Limits(confidence);
        return ((int)lower, (int)upper);
    }

    /// <summary>Most prediction intervals that miss, where each holds as often as stated and those of one kind miss together.</summary>
    /// <param name="shared">What is shared, of each forecast.</param>
    /// <param name="held">Share of intervals that hold, as stated.</param>
    /// <param name="confidence">How often no more miss, at least; in (0, 1).</param>
    public static int MostOutside(IEnumerable<string> shared, double held, double confidence)
    {
        Confidences.Check(held);
        Confidences.Check(confidence);
        List<int> kinds = [.. shared.GroupBy(s => s, StringComparer.Ordinal).Select(g => g.Count())];
        var (mean, variance) = (kinds.Sum() * (1 - held), held * (1 - held) * kinds.Sum(n => (double)n * n));
        return (int)CountDistribution.WithMoments(mean, variance).Limits(1 - 2 * (1 - confidence)).Upper;
    }
}
