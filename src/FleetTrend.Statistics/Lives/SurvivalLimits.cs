using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Limits of a product-limit survival S from Greenwood's sum G, the variance of ln S, on several scales: symmetric there, and turned back.
/// </summary>
/// <remarks>Source: Kalbfleisch and Prentice 1980; Klein and Moeschberger 1997, section 4.3; Meeker and Escobar 1998, section 3.6.</remarks>
internal sealed class SurvivalLimits(double confidence)
{
    private readonly double z = Quantile.NormalTwoSided(confidence);

    internal Interval Plain(double survival, double greenwood)
    {
        var reach = survival > 0 ? z * survival * Math.Sqrt(greenwood) : 0;
        return new Interval(Math.Max(0, survival - reach), Math.Min(1, survival + reach), confidence);
    }

    internal Interval Log(double survival, double greenwood)
    {
        if (survival <= 0) return Whole();
        var factor = Math.Exp(z * Math.Sqrt(greenwood));
        return new Interval(survival / factor, Math.Min(1, survival * factor), confidence);
    }

    internal Interval LogLog(double survival, double greenwood)
    {
        if (survival <= 0) return Whole();
        var power = Math.Exp(z * Math.Sqrt(greenwood) / -Math.Log(survival));
        return new Interval(Math.Pow(survival, power), Math.Pow(survival, 1 / power), confidence);
    }

    internal Interval Logit(double survival, double greenwood)
    {
        if (survival <= 0) return Whole();
        var odds = survival / (1 - survival);
        var factor = Math.Exp(z * Math.Sqrt(greenwood) / (1 - survival));
        return new Interval(odds / factor / (1 + (odds / factor)), 1 / (1 + (1 / (odds * factor))), confidence);
    }

    internal Interval Arcsine(double survival, double greenwood)
    {
        if (survival <= 0) return Whole();
        var angle = Math.Asin(Math.Sqrt(survival));
        var reach = z / 2 * Math.Sqrt(greenwood * survival / (1 - survival));
        var (lower, upper) = (Math.Sin(Math.Max(0, angle - reach)), Math.Sin(Math.Min(Math.PI / 2, angle + reach)));
        return new Interval(lower * lower, upper * upper, confidence);
    }

    /// <summary>At a survival of 0 no scale but the plain one is defined.</summary>
    private Interval Whole() => new(0, 1, confidence);
}
