using MathNet.Numerics;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// A life distribution with its parameters: what is true of a life if they are. Ages are hours (or whichever unit the scale has).
/// </summary>
/// <remarks>Source: NIST/SEMATECH e-Handbook 8.1.6; Meeker and Escobar, Statistical Methods for Reliability Data, 1998, chapter 4.</remarks>
public sealed record LifeModel
{
    private readonly StandardDistribution family;

    /// <summary>Makes a distribution from its scale and shape.</summary>
    /// <param name="distribution">The family.</param>
    /// <param name="scale">exp(mu): the Weibull or exponential scale (63.2 % have failed), the lognormal or loglogistic median; hours.</param>
    /// <param name="shape">1/sigma; must be 1 for the exponential.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is not positive and finite, or an exponential shape is not 1.</exception>
    public LifeModel(LifeDistribution distribution, double scale, double shape = 1)
    {
        if (!(scale > 0 && double.IsFinite(scale))) throw new ArgumentOutOfRangeException(nameof(scale), scale, "A scale is positive and finite.");
        if (!(shape > 0 && double.IsFinite(shape))) throw new ArgumentOutOfRangeException(nameof(shape), shape, "A shape is positive and finite.");
        if (distribution == LifeDistribution.Exponential && shape != 1)
            throw new ArgumentOutOfRangeException(nameof(shape), shape, "An exponential has shape 1.");
        family = StandardDistribution.Select(distribution);
        Distribution = distribution;
        Scale = scale;
        Shape = shape;
    }

    /// <summary>The family.</summary>
    public LifeDistribution Distribution { get; }

    /// <summary>exp(mu), hours.</summary>
    public double Scale { get; }

    /// <summary>1/sigma.</summary>
    public double Shape { get; }

    /// <summary>ln scale: mean of ln t for the lognormal.</summary>
    public double Mu => Math.Log(Scale);

    /// <summary>1/shape: standard deviation of ln t for the lognormal.</summary>
    public double Sigma => 1 / Shape;

    /// <summary>Probability of surviving beyond <paramref name="age"/>. Source: definition of the family.</summary>
    public double Survival(double age) => Math.Exp(LogSurvival(age));

    /// <summary>Probability of having failed by <paramref name="age"/>. Source: definition of the family.</summary>
    public double Cdf(double age) => age == 0 ? 0 : Math.Exp(family.LogCdf(Z(age)).Value);

    /// <summary>Hazard accumulated to <paramref name="age"/>, -ln S. Source: definition of the family.</summary>
    public double CumulativeHazard(double age) => -LogSurvival(age);

    /// <summary>Failures per hour among those still good at <paramref name="age"/>, which is above 0. Source: f/S, definition.</summary>
    public double Hazard(double age)
    {
        if (age == 0)
        {
            return Distribution == LifeDistribution.Lognormal || Shape > 1 ? 0
                : Shape == 1 ? 1 / Scale
                : double.PositiveInfinity;
        }

        var z = Z(age);
        return Math.Exp(family.LogDensity(z).Value - family.LogSurvival(z).Value) * Shape / age;
    }

    /// <summary>Failures per hour at <paramref name="age"/> among all that began. Source: definition of the family.</summary>
    public double Density(double age) => age == 0 ? Hazard(0) : Math.Exp(family.LogDensity(Z(age)).Value) * Shape / age;

    /// <summary>The age by which a share <paramref name="probability"/>, in (0, 1), has failed; 0.1 gives B10. Source: inverse of the cdf.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not in (0, 1).</exception>
    public double Quantile(double probability)
    {
        if (!(probability is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A quantile's probability lies strictly between 0 and 1.");
        return Scale * Math.Exp(family.ZOfLogSurvival(ElementaryFunctions.LogP1(-probability)) / Shape);
    }

    /// <summary>
    /// Probability that one still good at <paramref name="age"/> fails within the next <paramref name="ahead"/> hours.
    /// Source: 1 - S(age + ahead)/S(age); IEC 61649.
    /// </summary>
    public double ConditionalFailure(double age, double ahead)
    {
        CheckAge(ahead, nameof(ahead));
        if (age == 0 || ahead == 0) return Cdf(age == 0 ? ahead : 0);
        var (now, later) = (LogSurvival(age), LogSurvival(age + ahead));
        if (double.IsFinite(now)) return -ElementaryFunctions.ExpM1(later - now);

        // So far beyond the scale that survival itself is 0: its logarithm's logarithm is not.
        var between = new ConditionalHazard(family, Math.Log(age), Math.Log(age + ahead));
        return ElementaryFunctions.OneMinusExp(Math.Exp(between.At(Mu, Math.Log(Shape)).Value));
    }

    /// <summary>
    /// Mean life, hours; infinite for a loglogistic of shape 1 or less. Source: NIST/SEMATECH e-Handbook 8.1.6 (gamma function for the
    /// Weibull, exp(mu + sigma^2/2) for the lognormal, pi/shape over its sine for the loglogistic).
    /// </summary>
    public double Mean => RawMoment(1);

    /// <summary>
    /// Standard deviation of life, hours; infinite for a loglogistic of shape 2 or less. Source: as <see cref="Mean"/>.
    /// </summary>
    public double StandardDeviation
    {
        get
        {
            var (first, second) = (RawMoment(1), RawMoment(2));
            return double.IsInfinity(second) ? second : Math.Sqrt(second - (first * first));
        }
    }

    /// <summary>
    /// The likeliest age of failure, where the density is highest, hours; 0 where it falls from the start.
    /// Source: maximum of the family's density (textbook).
    /// </summary>
    public double Mode => Distribution switch
    {
        LifeDistribution.Lognormal => Scale * Math.Exp(-Sigma * Sigma),
        LifeDistribution.Loglogistic => Shape > 1 ? Scale * Math.Pow((Shape - 1) / (Shape + 1), Sigma) : 0,
        _ => Shape > 1 ? Scale * Math.Pow((Shape - 1) / Shape, Sigma) : 0,
    };

    /// <summary>
    /// Mean further life of one still good at <paramref name="age"/>, hours. Source: integral of S beyond the age over S(age), by the
    /// incomplete gamma (Weibull), normal (lognormal) and incomplete beta (loglogistic) functions.
    /// </summary>
    public double MeanResidualLife(double age)
    {
        CheckAge(age, nameof(age));
        if (age == 0 || double.IsInfinity(Mean)) return Mean;
        var z = Z(age);
        switch (Distribution)
        {
            case LifeDistribution.Lognormal:
                var beyond = StandardNormal.Instance.LogSurvival(z - Sigma).Value - LogSurvival(age);
                return (Mean * Math.Exp(beyond)) - age;
            case LifeDistribution.Loglogistic:
                var share = SpecialFunctions.BetaRegularized(1 - Sigma, 1 + Sigma, Survival(age));
                return (Mean * share / Survival(age)) - age;
            default:
                var hazard = Math.Exp(z);
                return hazard < 600
                    ? Mean * SpecialFunctions.GammaUpperRegularized(Sigma, hazard) * Math.Exp(hazard)
                    : 1 / Hazard(age); // the leading term; the next is smaller by a factor of 600 or more
        }
    }

    /// <summary>The age at which the hazard accumulated reaches a value; exact far into the tail, where 1 - S rounds to 1.</summary>
    internal double AgeOfCumulativeHazard(double hazard) => Scale * Math.Exp(family.ZOfLogSurvival(-hazard) / Shape);

    private double RawMoment(int order)
    {
        var k = order * Sigma;
        return Math.Pow(Scale, order) * Distribution switch
        {
            LifeDistribution.Lognormal => Math.Exp(k * k / 2),
            LifeDistribution.Loglogistic => k < 1 ? Math.PI * k / Math.Sin(Math.PI * k) : double.PositiveInfinity,
            _ => SpecialFunctions.Gamma(1 + k),
        };
    }

    private double LogSurvival(double age)
    {
        CheckAge(age, nameof(age));
        return age == 0 ? 0 : double.IsPositiveInfinity(age) ? double.NegativeInfinity : family.LogSurvival(Z(age)).Value;
    }

    private double Z(double age)
    {
        CheckAge(age, nameof(age));
        return Shape * Math.Log(age / Scale);
    }

    private static void CheckAge(double age, string name)
    {
        if (!(age >= 0)) throw new ArgumentOutOfRangeException(name, age, "An age is not negative.");
    }
}
