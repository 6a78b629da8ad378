using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Decisions;

/// <summary>A Weibull life, taken as known: S(t) = exp(-(t / scale)^shape).</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct WeibullLife
{
    /// <summary>Makes a life.</summary>
    /// <param name="shape">Shape, finite, above zero.</param>
    /// <param name="scale">Scale, hours, finite, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is not finite and above zero.</exception>
    public WeibullLife(double shape, double scale)
    {
        if (!(shape > 0) || double.IsInfinity(shape))
            throw new ArgumentOutOfRangeException(nameof(shape), shape, "A shape is finite and above zero.");
        if (!(scale > 0) || double.IsInfinity(scale))
            throw new ArgumentOutOfRangeException(nameof(scale), scale, "A scale is finite and above zero.");
        Shape = shape;
        Scale = scale;
    }

    /// <summary>Shape.</summary>
    public double Shape { get; }

    /// <summary>Scale, hours.</summary>
    public double Scale { get; }

    /// <summary>Mean life, hours.</summary>
    public double Mean => Scale * MathNet.Numerics.SpecialFunctions.Gamma(1 + 1 / Shape);

    /// <summary>Cumulative hazard at an age.</summary>
    /// <param name="age">Age, hours, zero or more.</param>
    public double CumulativeHazard(double age) => Math.Pow(age / Scale, Shape);

    /// <summary>Chance of failing within so many more hours, given the age reached.</summary>
    /// <param name="age">Age reached, hours, zero or more.</param>
    /// <param name="hours">Further hours, zero or more.</param>
    public double FailsWithin(double age, double hours) =>
        -ElementaryFunctions.ExpM1(CumulativeHazard(age) - CumulativeHazard(age + hours));

    /// <summary>Age at which the cumulative hazard reaches a value.</summary>
    internal double AgeAtHazard(double hazard) => Scale * Math.Pow(hazard, 1 / Shape);
}
