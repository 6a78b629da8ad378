using FleetTrend.Statistics.Lives;
using MathNet.Numerics;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>
/// The profile likelihood by trying everything: the log-likelihood of lives from the definition of each term, on a close row of points along
/// the curve on which a quantity has a value. It shares no code with the fit. ln age = mu + z/b, b = e^tau the shape.
/// </summary>
internal sealed class ExhaustiveProfile
{
    private const double From = -9;
    private const double To = 8;

    private readonly LifeDistribution distribution;
    private readonly Term[] terms;
    private readonly double earliest;
    private readonly double latest;

    public ExhaustiveProfile(LifeDistribution distribution, IReadOnlyList<Life> lives)
    {
        this.distribution = distribution;
        terms = [.. lives.Select(l => new Term(Math.Log(l.Entry), Math.Log(l.Lower), Math.Log(l.Upper), l.Failed, l.IsExact))];
        earliest = Math.Log(lives.Min(l => l.Entry > 0 ? l.Entry : l.Lower > 0 ? l.Lower : l.Upper));
        latest = Math.Log(lives.Max(l => l.Failed ? l.Upper : l.Lower));
    }

    /// <summary>z that a share of lives reaches: the quantile function of the standard distribution.</summary>
    public double Z(double share) => distribution switch
    {
        LifeDistribution.Weibull => Math.Log(-Math.Log(1 - share)),
        LifeDistribution.Lognormal => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, share),
        _ => Math.Log(share / (1 - share)),
    };

    /// <summary>Profile of the shape.</summary>
    public double OfShape(double shape, double step)
    {
        // Wide, since with a shape near nothing a likely lognormal can have its scale as far out as one over the shape squared.
        var middle = (earliest + latest) / 2;
        var (low, high) = (Math.Asinh(-(30 + (30 / shape) + ((latest - earliest) * shape))), Math.Asinh(30 + ((latest - earliest) * shape)));
        return Greatest(u => LogLikelihood(middle + (Math.Sinh(u) / shape), shape), low, high, (int)((high - low) / step));
    }

    /// <summary>Profile of the age at which z has a value.</summary>
    public double OfAge(double age, double z, double step) =>
        Along(b => Math.Log(age) - (z / b), step);

    /// <summary>Profile of the chance to fail between two ages, for the distributions whose mu then has a closed form.</summary>
    public double OfChance(double chance, double age, double later, double step)
    {
        var hazard = Hazard(chance);
        return Along(MuAt, step);

        double MuAt(double b)
        {
            // Weibull: e^(-b mu) (later^b - age^b) = hazard. Loglogistic: (1 + y r)/(1 + y) = e^hazard, y = (age/scale)^b, r = (later/age)^b.
            var ratio = b * Math.Log(later / age);
            if (distribution == LifeDistribution.Weibull) return Math.Log(age) + ((Math.Log(Math.Exp(ratio) - 1) - Math.Log(hazard)) / b);
            return ratio > hazard ? Math.Log(age) - (Math.Log((Math.Exp(hazard) - 1) / (Math.Exp(ratio) - Math.Exp(hazard))) / b) : double.NaN;
        }
    }

    /// <summary>-ln(1 - chance).</summary>
    public static double Hazard(double chance) => chance < 1e-8 ? chance : -Math.Log(1 - chance);

    /// <summary>The log-likelihood: ln f (exact), ln S (good), ln of the difference of S (interval), each less ln S of the entry.</summary>
    public double LogLikelihood(double mu, double b)
    {
        double sum = 0;
        foreach (var term in terms)
        {
            var lower = b * (term.Lower - mu);
            sum += !term.Failed ? LogSurvival(lower)
                : term.IsExact ? LogDensity(lower) + Math.Log(b) - term.Lower
                : LogBetween(lower, b * (term.Upper - mu));
            if (double.IsFinite(term.Entry)) sum -= LogSurvival(b * (term.Entry - mu));
            if (double.IsNaN(sum)) return double.NegativeInfinity;
        }

        return sum;
    }

    private double Along(Func<double, double> muAt, double step) =>
        Greatest(tau => LogLikelihood(muAt(Math.Exp(tau)), Math.Exp(tau)), From, To, (int)((To - From) / step));

    /// <summary>The best of a row of points; between its neighbours a row of nine, seven times over.</summary>
    private static double Greatest(Func<double, double> function, double from, double to, int points)
    {
        var (best, at) = (double.NegativeInfinity, from);
        for (var round = 0; round < 8; round++)
        {
            var width = (to - from) / points;
            for (var i = 0; i <= points; i++)
            {
                var value = function(from + (i * width));
                if (value > best) (best, at) = (value, from + (i * width));
            }

            (from, to, points) = (at - width, at + width, 8);
        }

        return best;
    }

    private double LogSurvival(double z) => distribution switch
    {
        _ when double.IsNegativeInfinity(z) => 0,
        LifeDistribution.Weibull => -Math.Exp(z),
        LifeDistribution.Lognormal => LogUpperTail(z),
        _ => z > 30 ? -z : -Math.Log(1 + Math.Exp(z)),
    };

    private double LogDensity(double z) => distribution switch
    {
        LifeDistribution.Weibull => z - Math.Exp(z),
        LifeDistribution.Lognormal => (-z * z / 2) - (Math.Log(2 * Math.PI) / 2),
        _ => z + (2 * LogSurvival(z)),
    };

    private double LogBetween(double lower, double upper)
    {
        if (distribution == LifeDistribution.Lognormal && upper < 0) (lower, upper) = (-upper, -lower);
        var (early, late) = (LogSurvival(lower), LogSurvival(upper));
        var gap = early - late;
        return early + (gap < 1e-5 ? Math.Log(gap) - (gap / 2) : Math.Log(1 - Math.Exp(-gap)));
    }

    /// <summary>From the complementary error function; far out from the first terms of the asymptotic series.</summary>
    private static double LogUpperTail(double z)
    {
        if (double.IsInfinity(z)) return z > 0 ? double.NegativeInfinity : 0;
        if (z < 12) return Math.Log(SpecialFunctions.Erfc(z / Math.Sqrt(2)) / 2);
        var s = 1 / (z * z);
        return (-z * z / 2) - Math.Log(z * Math.Sqrt(2 * Math.PI)) + Math.Log(1 - (s * (1 - (3 * s * (1 - (5 * s * (1 - (7 * s))))))));
    }

    /// <summary>A life by the logarithms of its ages.</summary>
    private sealed record Term(double Entry, double Lower, double Upper, bool Failed, bool IsExact);
}
