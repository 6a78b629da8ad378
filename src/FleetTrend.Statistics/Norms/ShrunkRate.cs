using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Norms;

/// <summary>One unit's rate given its own count and what the others tell of rates.</summary>
public sealed class ShrunkRate
{
    private const int MostSteps = 300;
    private const double NarrowShape = 1e6;
    private const double MostAtOnce = 2;

    private readonly RateNode[] nodes;
    private readonly CountExposure unit;
    private readonly Lazy<double> medianRate;
    private readonly Lazy<Interval> rateInterval;
    private readonly Lazy<Interval> ratioInterval;

    internal ShrunkRate(CountExposure unit, RateNode[] nodes, double confidence)
    {
        this.unit = unit;
        this.nodes = nodes;
        Rate = nodes.Sum(n => n.Weight * (n.Shape + unit.Events) / (n.Shape / n.Mean + unit.Exposure));
        Ratio = nodes.Sum(n => n.Weight * (n.Shape + unit.Events) / (n.Shape + n.Mean * unit.Exposure));
        rateInterval = new Lazy<Interval>(() => Limits(confidence, RateParameter, Rate));
        medianRate = new Lazy<double>(() => Root(0.5, RateParameter, Rate));
        ratioInterval = new Lazy<Interval>(() => Limits(confidence, n => n.Shape + n.Mean * unit.Exposure, Ratio));
    }

    /// <summary>Events counted.</summary>
    public int Events => unit.Events;

    /// <summary>Hours or expected events.</summary>
    public double Exposure => unit.Exposure;

    /// <summary>Posterior mean of the rate, events per unit of exposure.</summary>
    public double Rate { get; }

    /// <summary>
    /// Posterior median of the rate, events per unit of exposure: the value to print beside <see cref="RateInterval"/>, since it lies inside
    /// at every credibility, where the mean of a skewed posterior need not.
    /// </summary>
    public double MedianRate => medianRate.Value;

    /// <summary>Equal-tailed credible interval of the rate.</summary>
    public Interval RateInterval => rateInterval.Value;

    /// <summary>Posterior mean of the unit's rate over the mean rate of units.</summary>
    public double Ratio { get; }

    /// <summary>Equal-tailed credible interval of the ratio.</summary>
    public Interval RatioInterval => ratioInterval.Value;

    /// <summary>Chance that the unit's rate is more than so many times the mean rate of units.</summary>
    /// <param name="ratio">The ratio to exceed, zero or more.</param>
    /// <returns>The chance, in [0, 1].</returns>
    /// <remarks>Source: tail of the mixture of gamma posteriors, see <see cref="HierarchicalRates"/>.</remarks>
    public double ExceedanceProbability(double ratio)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ratio);
        return ratio == 0 ? 1 : Above(ratio, n => n.Shape + n.Mean * unit.Exposure);
    }

    private double Above(double value, Func<RateNode, double> rateParameter)
    {
        var sum = 0.0;
        foreach (var node in nodes)
            sum += node.Weight * UpperGamma(node.Shape + unit.Events, rateParameter(node) * value);
        return Math.Min(1, sum);
    }

    private double RateParameter(RateNode node) => node.Shape / node.Mean + unit.Exposure;

    private Interval Limits(double confidence, Func<RateNode, double> rateParameter, double mean)
    {
        var tail = (1 - confidence) / 2;
        return new Interval(Root(1 - tail, rateParameter, mean), Root(tail, rateParameter, mean), confidence);
    }

    /// <summary>
    /// The value that is exceeded with a chance, by Newton's steps on the logarithm of the smaller tail, which is all but straight in the logarithm of
    /// the value. A step that leaves what is known to hold the root is halved towards it.
    /// </summary>
    private double Root(double chance, Func<RateNode, double> rateParameter, double mean)
    {
        var rates = Array.ConvertAll(nodes, n => rateParameter(n));
        var logGammas = Array.ConvertAll(nodes, n => SpecialFunctions.GammaLn(n.Shape + unit.Events));
        var isUpper = chance <= 0.5;
        var target = Math.Log(isUpper ? chance : 1 - chance);
        var (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
        var y = Math.Log(mean);
        for (var step = 0; step < MostSteps; step++)
        {
            var (above, density) = At(y);
            var tail = isUpper ? above : 1 - above;
            if (above > chance)
                low = y;
            else
                high = y;
            // Of a tail that is nothing in our digits only its side is known.
            var next = tail > 0 && density > 0 ? y + (isUpper ? 1 : -1) * (Math.Log(tail) - target) * tail / density : double.NaN;
            if (!(next > low && next < high) || Math.Abs(next - y) > MostAtOnce)
                next = double.IsInfinity(high) ? low + MostAtOnce : double.IsInfinity(low) ? high - MostAtOnce : (low + high) / 2;
            if (Math.Abs(next - y) <= 1e-10 || Math.Abs(next) > 700)
                return Math.Exp(next);
            y = next;
        }

        return Math.Exp(y);

        (double Above, double Density) At(double logValue)
        {
            var (value, sum, slope) = (Math.Exp(logValue), 0.0, 0.0);
            for (var i = 0; i < nodes.Length; i++)
            {
                var (shape, x) = (nodes[i].Shape + unit.Events, rates[i] * value);
                sum += nodes[i].Weight * UpperGamma(shape, x);
                slope += nodes[i].Weight * (shape < NarrowShape
                    ? Math.Exp(shape * Math.Log(x) - x - logGammas[i])
                    : Normal.PDF(0, 1, NormalForm(shape, x)) * Math.Cbrt(x / shape) * Math.Sqrt(shape));
            }

            return (Math.Min(1, sum), slope);
        }
    }

    /// <summary>
    /// Upper gamma tail. For shapes beyond a million the distribution is so narrow that the normal form on the cube root (error below
    /// 1e-9 there) replaces a series that would take as many steps as the root of the shape.
    /// </summary>
    private static double UpperGamma(double shape, double x) => shape < NarrowShape
        ? SpecialFunctions.GammaUpperRegularized(shape, x)
        : SpecialFunctions.Erfc(NormalForm(shape, x) / Math.Sqrt(2)) / 2;

    private static double NormalForm(double shape, double x) => (Math.Cbrt(x / shape) - 1 + 1 / (9 * shape)) * 3 * Math.Sqrt(shape);
}
