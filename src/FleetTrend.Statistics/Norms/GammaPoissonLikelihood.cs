using MathNet.Numerics;

namespace FleetTrend.Statistics.Norms;

/// <summary>
/// Marginal log-likelihood of counts whose rates come from a gamma distribution, in terms of the distribution's mean and shape. Sums over
/// events are taken through the number of units with more than j events (<see cref="UnitsAbove"/>), so that a call costs one pass over units and
/// stays exact for very large shapes, where gamma functions would cancel.
/// </summary>
internal sealed class GammaPoissonLikelihood
{
    private readonly CountExposure[] units;
    private readonly UnitsAbove above;
    private readonly double constant;

    public GammaPoissonLikelihood(IEnumerable<CountExposure> units)
    {
        this.units = [.. units.Where(u => u.Exposure > 0)];
        above = new UnitsAbove(this.units.Select(u => u.Events));
        foreach (var unit in this.units)
        {
            Events += unit.Events;
            Exposure += unit.Exposure;
            if (unit.Events > 0)
                constant += unit.Events * Math.Log(unit.Exposure) - SpecialFunctions.GammaLn(unit.Events + 1.0);
        }
    }

    /// <summary>Units with exposure.</summary>
    public int Units => units.Length;

    /// <summary>Events in all.</summary>
    public long Events { get; }

    /// <summary>Exposure in all.</summary>
    public double Exposure { get; }

    /// <summary>Events over exposure.</summary>
    public double PooledRate => Events / Exposure;

    /// <summary>Log-likelihood with one rate for all.</summary>
    public double Poisson => constant + Events * Math.Log(PooledRate) - Events;

    /// <summary>Log-likelihood at a mean and a shape.</summary>
    public double At(double mean, double shape)
    {
        var sum = constant + Events * Math.Log(mean) + above.Logarithms(shape);
        foreach (var unit in units)
            sum -= (shape + unit.Events) * ElementaryFunctions.LogP1(mean * unit.Exposure / shape);
        return sum;
    }

    /// <summary>The mean that maximises the likelihood at a shape.</summary>
    public double BestMean(double shape)
    {
        var low = units.Min(u => u.Events / u.Exposure);
        var high = units.Max(u => u.Events / u.Exposure);
        if (low == high)
            return PooledRate;
        // The score in log mean is the sum of (x - mt) / (1 + mt / shape): positive at the lowest raw rate, negative at the highest.
        return Math.Exp(RootSearch.Find(
            y => MeanScore(Math.Exp(y), shape), Math.Log(Math.Max(low, 1e-12 * high)), Math.Log(high)));
    }

    /// <summary>Minus the second derivative of the log-likelihood by log mean.</summary>
    public double MeanInformation(double mean, double shape)
    {
        var sum = 0.0;
        foreach (var unit in units)
        {
            var w = 1 / (1 + mean * unit.Exposure / shape);
            sum += mean * unit.Exposure * w * w * (1 + unit.Events / shape);
        }
        return sum;
    }

    /// <summary>
    /// Errors of log shape and log rate parameter at the maximum, from the second derivatives there; null where they do not
    /// bend downwards in every direction.
    /// </summary>
    public GammaPoissonErrors? Errors(double mean, double shape)
    {
        var rate = shape / mean;
        var (byShape, mixed, byRate) = (above.Squares(shape), 0.0, 0.0);
        foreach (var unit in units)
        {
            var share = rate / (rate + unit.Exposure);
            mixed -= shape * (1 - share);
            byRate += shape - (shape + unit.Events) * share * share;
        }
        var determinant = byShape * byRate - mixed * mixed;
        return byShape > 0 && determinant > 0
            ? new GammaPoissonErrors(Math.Sqrt(byRate / determinant), Math.Sqrt(byShape / determinant), -mixed / determinant)
            : null;
    }

    /// <summary>Derivative of the log-likelihood by shape, the mean held.</summary>
    public double ShapeScore(double mean, double shape)
    {
        var sum = -above.Slopes(shape);
        foreach (var unit in units)
        {
            var a = mean * unit.Exposure / shape;
            sum += (shape + unit.Events) / shape * (a / (1 + a)) - ElementaryFunctions.LogP1(a);
        }
        return sum;
    }

    private double MeanScore(double mean, double shape)
    {
        var sum = 0.0;
        foreach (var unit in units)
            sum += (unit.Events - mean * unit.Exposure) / (1 + mean * unit.Exposure / shape);
        return sum;
    }
}
