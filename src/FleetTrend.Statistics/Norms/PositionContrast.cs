using System.Runtime.InteropServices;
using FleetTrend.Statistics.Rates;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Norms;

/// <summary>
/// One position (cylinder, side) beside the others of the same units (aircraft). Units may differ as they like: each is compared with itself. Nor need
/// events be independent: one place that has many on one unit is taken as one unit's.
/// </summary>
public sealed record PositionContrast
{
    /// <summary>The spread of few units is small by chance: with fewer, Student's t has the degrees of so many, and a variation is assumed.</summary>
    private const int FewestUnits = 5;

    private const double AssumedVariation = 0.5;

    /// <summary>Units may agree by chance: the spread is taken as that of half a Poisson count at least.</summary>
    private const double LeastDispersion = 0.5;

    private PositionContrast(int events, int others, int units, double ratio, Interval interval, double pValue, double smallestPValue) =>
        (Events, OtherEvents, Units, Ratio, Interval, PValue, SmallestPValue) = (events, others, units, ratio, interval, pValue, smallestPValue);

    /// <summary>Events at the position, on units where it was watched beside others.</summary>
    public int Events { get; }

    /// <summary>Events at the others of these units.</summary>
    public int OtherEvents { get; }

    /// <summary>These units that had an event: the others tell nothing.</summary>
    public int Units { get; }

    /// <summary>Rate at the position over the rate at the others; infinite where the others had none.</summary>
    public double Ratio { get; }

    /// <summary>Its interval.</summary>
    public Interval Interval { get; }

    /// <summary>Two-sided chance of a difference at least this large, were the positions of each unit alike.</summary>
    public double PValue { get; }

    /// <summary>The smallest p-value that events so spread over the units could give.</summary>
    public double SmallestPValue { get; }

    /// <summary>Compares each position with the others.</summary>
    /// <param name="units">The units, all with the same positions in the same order.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>One per position; null for a position that was watched beside others on no unit with an event.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <exception cref="ArgumentException">Units have different numbers of positions.</exception>
    /// <remarks>
    /// Source: ratio with a stratum per unit, Mantel and Haenszel 1959 in the form for hours, Rothman and Greenland 1998, chapter 15; variance of its
    /// logarithm with units as clusters, each beside the ratio of the others, Mancl and DeRouen 2001, Biometrics 57, no less than half that of Poisson
    /// counts; Student's t, one degree less than units. Fewer than five units: t with four degrees and a coefficient of variation of one half. No event on a
    /// side: exact limits of the share, Clopper and Pearson 1934, Biometrika 26, for the unit-wise exposure. Test: exact permutation of the positions within
    /// each unit, Pitman 1937; twice the smaller tail. <see cref="SmallestPValue"/>: Tarone 1990, Biometrics 46.
    /// </remarks>
    public static IReadOnlyList<PositionContrast?> Estimate(IReadOnlyList<PositionUnit> units, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(units);
        Confidences.Check(confidence);
        if (units.Count == 0)
            return [];
        var positions = units[0].Events.Count;
        if (units.Any(u => u.Events.Count != positions || u.Exposures.Count != positions))
            throw new ArgumentException("All units must have the same positions.", nameof(units));
        List<PositionUnit> telling = [.. units.Where(u => u.Times > 0 && u.Events.Any(e => e > 0))];
        var isWhole = telling.TrueForAll(u => u.Exposures.All(e => e > 0));
        var shared = isWhole && telling.Count > 0 ? PositionLaw.Of(telling) : null; // one law for all positions
        return [.. Enumerable.Range(0, positions).Select(p => Compare(telling, p, shared, confidence))];
    }

    private static PositionContrast? Compare(List<PositionUnit> telling, int position, PositionLaw? shared, double confidence)
    {
        List<PositionUnit> units = [.. telling.Where(u => u.Exposures[position] > 0 && u.Exposures.Sum() > u.Exposures[position])];
        if (units.Count == 0)
            return null;
        var law = shared ?? PositionLaw.Of(units);
        List<Stratum> strata = [.. units.Select(u => new Stratum(u, position))];
        var (events, others) = (strata.Sum(s => s.Times * s.Events), strata.Sum(s => s.Times * s.Others));
        var ratio = strata.Sum(s => s.Times * s.Above) / strata.Sum(s => s.Times * s.Below);
        var interval = events > 0 && others > 0 ? Around(ratio, strata, confidence) : OneSided(strata, events, confidence);
        var (p, smallest) = law.Test(units, position);
        return new PositionContrast(events, others, strata.Sum(s => s.Times), ratio, interval, p, smallest);
    }

    private static Interval Around(double ratio, List<Stratum> strata, double confidence)
    {
        var (above, below) = (strata.Sum(s => s.Times * s.Above), strata.Sum(s => s.Times * s.Below));
        var units = strata.Sum(s => s.Times);
        var squares = 0.0;
        foreach (var stratum in strata.Where(s => s.Below < below))
            squares += stratum.Times * Math.Pow((stratum.Above - (ratio * stratum.Below)) / (1 - (stratum.Below / below)), 2);
        var robust = StudentT.InvCDF(0, 1, Math.Max(units, FewestUnits) - 1, (1 + confidence) / 2) * Math.Sqrt(squares) / above;
        // Of Poisson counts, by the parts of the ratio; where few units are known, as if they differed.
        var counts = strata.Sum(s => s.Times * s.All * s.Share * (1 - s.Share)) / (above * below);
        var least = LeastDispersion * counts;
        if (units < FewestUnits)
        {
            var all = strata.Sum(s => s.Times * (double)s.All);
            least = counts + (AssumedVariation * AssumedVariation * strata.Sum(s => s.Times * Math.Pow(s.All / all, 2)));
        }

        var factor = Math.Exp(Math.Max(robust, Quantile.NormalTwoSided(confidence) * Math.Sqrt(least)));
        return new Interval(ratio / factor, ratio * factor, confidence);
    }

    /// <summary>All events on one side: the ratio at which that has half the chance that is left.</summary>
    private static Interval OneSided(List<Stratum> strata, int events, double confidence)
    {
        var tail = Math.Log((1 - confidence) / 2);
        // The chance falls from one to zero as the ratio grows (none at the position), or rises (none at the others).
        double LogChance(double ratio) => strata.Sum(s =>
        {
            var odds = ratio * s.Share / (1 - s.Share);
            return s.Times * s.All * -Math.Log(1 + (events == 0 ? odds : 1 / odds));
        });
        var (low, high) = (1e-9, 1e9);
        for (var i = 0; i < 200 && high / low > 1 + 1e-12; i++)
        {
            var middle = Math.Sqrt(low * high);
            if ((LogChance(middle) > tail) == (events == 0))
                low = middle;
            else
                high = middle;
        }

        return events == 0 ? new Interval(0, high, confidence) : new Interval(low, double.PositiveInfinity, confidence);
    }

    /// <summary>A unit with one position beside its others.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly struct Stratum
    {
        public Stratum(PositionUnit unit, int position)
        {
            var whole = unit.Exposures.Sum();
            Times = unit.Times;
            Share = unit.Exposures[position] / whole;
            Events = unit.Events[position];
            Others = unit.Events.Index().Where(e => unit.Exposures[e.Index] > 0).Sum(e => e.Item) - Events;
        }

        public int Times { get; }

        /// <summary>Share of the unit's exposure at the position.</summary>
        public double Share { get; }

        public int Events { get; }

        public int Others { get; }

        public int All => Events + Others;

        public double Above => Events * (1 - Share);

        public double Below => Others * Share;
    }
}
