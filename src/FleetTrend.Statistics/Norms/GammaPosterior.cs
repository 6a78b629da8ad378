using FleetTrend.Statistics.Rates;
using MathNet.Numerics;

namespace FleetTrend.Statistics.Norms;

/// <summary>A gamma distribution of a rate.</summary>
public sealed record GammaPosterior
{
    /// <summary>Makes a distribution.</summary>
    /// <param name="shape">Shape, above zero.</param>
    /// <param name="rate">Rate parameter in units of exposure, above zero.</param>
    /// <param name="confidence">Credibility of <see cref="Interval"/>, in (0, 1).</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is not above zero, or the credibility is outside (0, 1).</exception>
    public GammaPosterior(double shape, double rate, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shape);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(rate);
        Confidences.Check(confidence);
        Shape = shape;
        Rate = rate;
        var tail = (1 - confidence) / 2;
        Interval = new Interval(Quantile.Gamma(tail, shape) / rate, Quantile.Gamma(1 - tail, shape) / rate, confidence);
    }

    /// <summary>Shape.</summary>
    public double Shape { get; }

    /// <summary>Rate parameter, in units of exposure.</summary>
    public double Rate { get; }

    /// <summary>Mean, events per unit of exposure.</summary>
    public double Mean => Shape / Rate;

    /// <summary>Equal-tailed credible interval.</summary>
    public Interval Interval { get; }

    /// <summary>
    /// The rate that is not exceeded with a stated chance. Its inverse is a quantile of the mean time between events at the
    /// chance left: the time that is exceeded with chance 0.8 is one over the rate at 0.8.
    /// </summary>
    /// <param name="probability">Chance, in (0, 1).</param>
    /// <returns>Events per unit of exposure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The chance is outside (0, 1).</exception>
    /// <remarks>Source: NIST/SEMATECH e-Handbook 8.4.6 (limits of the mean time between failures from the gamma distribution).</remarks>
    public double RateNotExceededWith(double probability)
    {
        Confidences.Check(probability);
        return Quantile.Gamma(probability, Shape) / Rate;
    }

    /// <summary>Chance that the rate lies above a value.</summary>
    /// <param name="value">Events per unit of exposure, zero or more.</param>
    public double Above(double value) => value <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(Shape, Rate * value);
}
