using FleetTrend.Statistics.Rates;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Whether recurring events come more and more often, or less and less, on units (aircraft) that differ, where events are known only to lie between looks,
/// looks are irregular, units join late, and events may come in bunches.
/// </summary>
/// <remarks>
/// With m a span's exposure times the mean of the law in it, an event falls into the span with chance m over the sum of m: of its unit, where each
/// has a level of
/// its own (a level drops out, given how many events the unit had), or of all units, where levels scatter about one. The growth maximises the product of these
/// chances. Its variance comes from the scores of units, corrected for what each has of the information, and is no less than that of events that come
/// singly, for
/// which the normal law holds; else Student's t with one degree less than the effective number of units, (sum of x)² / sum of x² of their events.
/// Source: Crow 1975, AMSAA Technical Report 138, section 3.2 (conditional likelihood of the power law); Cox and Lewis 1966 (log-linear); MIL-HDBK-189 (1981)
/// (counts between looks); Liang and Zeger 1986, Kauermann and Carroll 2001, Mancl and DeRouen 2001 (variance by clusters); Kish 1965 (effective
/// number). How often the limits hold:
/// COVERAGE.md.
/// </remarks>
/// <param name="Law">The law.</param>
/// <param name="Growth">The growth, per unit of time (log-linear) or as an exponent (power law), with its limits.</param>
/// <param name="PValue">Two-sided chance of a growth at least as far from none, were there none.</param>
/// <param name="Events">Events behind it.</param>
/// <param name="Units">Units that had an event.</param>
/// <param name="Dispersion">Variance of the growth over that of events that come singly: near one where they do.</param>
public sealed record GrowthFit(
    GrowthLaw Law, IntervalEstimate Growth, double PValue, long Events, int Units, double Dispersion)
{
    /// <summary>Fewest units with an event: fewer do not tell how much units scatter.</summary>
    public const int FewestUnits = 4;

    /// <summary>Growths beyond which nobody would wait for a statistic.</summary>
    private const double LeastExponent = 0.01;
    private const double MostExponent = 50;
    private const double MostDoublings = 60;
    private const int MostSteps = 20;

    /// <summary>Estimates the growth.</summary>
    /// <param name="units">Units, each with its spans in any order.</param>
    /// <param name="law">The law; the power law asks for starts of zero or more.</param>
    /// <param name="levels">What is taken of the levels of units.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The growth; or the reason: too few units with an event, or events that all lie at one end of what was watched.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1), or a start is negative under the power law.</exception>
    /// <remarks>Source: see the type's remarks.</remarks>
    public static Outcome<GrowthFit> Estimate(
        IReadOnlyList<IReadOnlyList<GrowthSpan>> units, GrowthLaw law, GrowthLevels levels, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(units);
        Confidences.Check(confidence);
        var all = units.SelectMany(u => u).ToList();
        if (all.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit was watched for any time.");
        if (law == GrowthLaw.PowerLaw && all.Exists(s => s.Start < 0))
            throw new ArgumentOutOfRangeException(nameof(units), "The power law counts from zero.");
        var events = all.Sum(s => (long)s.Events);
        var withEvents = units.Count(u => u.Any(s => s.Events > 0));
        if (events == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No event: its trend is unknown.");
        if (withEvents < FewestUnits)
            return new NotEstimable(NotEstimableKind.TooFewEvents, events, $"Fewer than {FewestUnits} units with an event.");

        List<GrowthLikelihood> watched =
            [.. units.Where(u => u.Count > 0 && (levels == GrowthLevels.Common || u.Any(s => s.Events > 0))).Select(u => new GrowthLikelihood(u, law))];
        var none = law == GrowthLaw.PowerLaw ? 1 : 0;
        if (Maximum(watched, law, levels, none, all.Max(s => s.Stop) - all.Min(s => s.Start)) is not { } growth)
            return new NotEstimable(NotEstimableKind.NoFiniteMaximum, events, "All events lie at one end of what was watched.");
        var parts = Parts(watched, growth, levels);
        var (information, known) = (parts.Sum(p => p.Information), parts.Sum(p => p.Expected));
        if (!(information > 0) || parts.Exists(p => known - p.Expected <= 1e-9 * known))
            return new NotEstimable(NotEstimableKind.TooFewEvents, events, "Without one of the units the growth cannot be told.");
        // Own levels: unbiased where events come singly. About a common level few units pull it towards themselves, so that each is taken without itself.
        var power = levels == GrowthLevels.Own ? 1 : 2;
        var robust = Math.Sqrt(parts.Sum(p => p.Score * p.Score / Math.Pow(1 - (p.Expected / known), power))) / information;
        var single = 1 / Math.Sqrt(information);
        var effective = (double)events * events / units.Sum(u => Math.Pow(u.Sum(s => (double)s.Events), 2));
        var degrees = Math.Max(1, Math.Round(effective) - 1);
        var reach = Math.Max(StudentT.InvCDF(0, 1, degrees, (1 + confidence) / 2) * robust, Quantile.NormalTwoSided(confidence) * single);
        var off = Math.Abs(growth - none);
        return new GrowthFit(
            law, new IntervalEstimate(growth, new Interval(growth - reach, growth + reach, confidence)),
            Math.Max(robust > 0 ? 2 * StudentT.CDF(0, 1, degrees, -off / robust) : 0, 2 * Normal.CDF(0, 1, -off / single)), events, withEvents,
            robust * robust * information);
    }

    /// <summary>The growth of the highest likelihood; null where it rises to an end. Newton's steps from none lead there, else a search.</summary>
    private static double? Maximum(List<GrowthLikelihood> units, GrowthLaw law, GrowthLevels levels, double none, double length)
    {
        var (low, high) = law == GrowthLaw.PowerLaw ? (LeastExponent, MostExponent) : (-MostDoublings / length, MostDoublings / length);
        var growth = none;
        for (var i = 0; i < MostSteps; i++)
        {
            var parts = Parts(units, growth, levels);
            var step = parts.Sum(p => p.Score) / parts.Sum(p => p.Information);
            growth += step;
            if (!(growth > low && growth < high))
                break;
            if (Math.Abs(step) < 1e-7 * (high - low)) // the next would be as small as its square
                return growth;
        }

        return Score(low) > 0 && Score(high) < 0 ? RootSearch.Find(Score, low, high) : null;

        double Score(double at) => Parts(units, at, levels).Sum(p => p.Score);
    }

    /// <summary>Each unit's part of the score, of the information observed and of that expected.</summary>
    private static List<(double Score, double Information, double Expected)> Parts(List<GrowthLikelihood> units, double growth, GrowthLevels levels)
    {
        var slopes = units.ConvertAll(u => u.At(growth));
        if (levels == GrowthLevels.Own)
            return slopes.ConvertAll(s => Part(s, s.Events, s.First));
        var most = slopes.Max(s => s.LogMean);
        var total = slopes.Sum(s => Math.Exp(s.LogMean - most));
        double events = slopes.Sum(s => s.Events);
        var mean = slopes.Sum(s => Math.Exp(s.LogMean - most) * s.First) / total;
        return slopes.ConvertAll(s => Part(s, events * Math.Exp(s.LogMean - most) / total, mean));
    }

    private static (double Score, double Information, double Expected) Part(GrowthSlopes unit, double expected, double mean)
    {
        var known = expected * (unit.Square - (2 * unit.First * mean) + (mean * mean));
        return (unit.EventSlope - (unit.Events * mean) - (expected * (unit.First - mean)), known + (expected * unit.Bend) - unit.EventBend, known);
    }
}
