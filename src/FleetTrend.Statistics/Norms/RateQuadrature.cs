namespace FleetTrend.Statistics.Norms;

/// <summary>
/// The posterior of the distribution of rates as weighted points: equal steps in log shape, and for each in log mean around its
/// best value. For a smooth density that falls off at both ends equal steps are as good as any rule.
/// </summary>
internal static class RateQuadrature
{
    private const double LowestLogShape = -9;
    private const double HighestLogShape = 40;
    private const double Depth = 25;
    private const int ShapeSteps = 36;
    private const double MeanStepsPerDeviation = 1.25;

    /// <summary>Beyond this many units the distribution is known so well that its best point stands for it.</summary>
    private const int UnitsOfCertainty = 5000;

    public static RateNode[] Nodes(GammaPoissonLikelihood likelihood, RatePrior prior, double smallestWeight)
    {
        var (low, high, peak) = Range(likelihood, prior);
        if (likelihood.Units > UnitsOfCertainty)
            return [new RateNode(likelihood.BestMean(Math.Exp(peak)), Math.Exp(peak), 1)];
        var raw = new List<RateNode>();
        var step = (high - low) / ShapeSteps;
        for (var k = 0; k <= ShapeSteps; k++)
            AddMeans(raw, likelihood, prior, Math.Exp(low + k * step));
        return Normalized(raw, smallestWeight);
    }

    /// <summary>Log shapes between which the posterior, along its best means, is not negligible.</summary>
    private static (double Low, double High, double Peak) Range(GammaPoissonLikelihood likelihood, RatePrior prior)
    {
        const double step = 0.5;
        var ridge = new List<(double LogShape, double Value)>();
        for (var v = LowestLogShape; v <= HighestLogShape; v += step)
        {
            var shape = Math.Exp(v);
            var mean = likelihood.BestMean(shape);
            ridge.Add((v, likelihood.At(mean, shape) + prior.OnLogs(mean, shape)));
        }
        var top = ridge.MaxBy(r => r.Value);
        var inside = ridge.Where(r => r.Value > top.Value - Depth).ToList();
        return (inside[0].LogShape - step, inside[^1].LogShape + step, top.LogShape);
    }

    private static void AddMeans(List<RateNode> raw, GammaPoissonLikelihood likelihood, RatePrior prior, double shape)
    {
        var best = likelihood.BestMean(shape);
        var step = 1 / (MeanStepsPerDeviation * Math.Sqrt(likelihood.MeanInformation(best, shape)));
        double Value(int k)
        {
            var mean = best * Math.Exp(k * step);
            return likelihood.At(mean, shape) + prior.OnLogs(mean, shape);
        }

        var top = Value(0);
        raw.Add(new RateNode(best, shape, top + Math.Log(step)));
        foreach (var direction in (int[])[1, -1])
        {
            for (var k = direction; Math.Abs(k) < 200; k += direction)
            {
                var value = Value(k);
                // Negated so that it also stops where a very small shape lets the mean run out of range.
                if (!(value >= top - Depth))
                    break;
                raw.Add(new RateNode(best * Math.Exp(k * step), shape, value + Math.Log(step)));
            }
        }
    }

    private static RateNode[] Normalized(List<RateNode> raw, double smallestWeight)
    {
        var top = raw.Max(n => n.Weight);
        var total = raw.Sum(n => Math.Exp(n.Weight - top));
        var kept = raw.Select(n => n with { Weight = Math.Exp(n.Weight - top) / total }).Where(n => n.Weight > smallestWeight).ToArray();
        var sum = kept.Sum(n => n.Weight);
        return Array.ConvertAll(kept, n => n with { Weight = n.Weight / sum });
    }
}
