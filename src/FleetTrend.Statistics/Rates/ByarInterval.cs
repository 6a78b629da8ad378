namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Limits of the mean of a Poisson count by Byar's approximation in its mid-p form: the cube root of a gamma variable is near
/// normal. Close to <see cref="MidPInterval"/> without a search; where a limit must hold, use <see cref="GarwoodInterval"/>.
/// </summary>
public static class ByarInterval
{
    /// <summary>Two-sided interval of the mean count; closed at both ends.</summary>
    /// <param name="events">Events counted, zero or more.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <returns>Limits in events: a (1 - 1/(9a) ± z/(3√a))³ with a = events + 1/2; never below zero.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative count, or confidence outside (0, 1).</exception>
    /// <remarks>Source: Rothman and Boice 1979, Epidemiologic Analysis with a Programmable Calculator; R package epitools, pois.byar.</remarks>
    public static Interval Estimate(int events, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        Confidences.Check(confidence);
        var a = events + 0.5;
        var z = Quantile.NormalTwoSided(confidence);
        double Limit(double normal)
        {
            var root = 1 - 1 / (9 * a) + normal / (3 * Math.Sqrt(a));
            return Math.Max(0, a * root * root * root);
        }

        return new Interval(Limit(-z), Limit(z), confidence);
    }
}
