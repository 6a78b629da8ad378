using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// All pairs (mu, tau) whose log-likelihood lies no further below the maximum than half the chi-square quantile. The profile-likelihood
/// limits of any quantity are its least and its greatest value in there.
/// </summary>
/// <remarks>
/// That is the same as following the profile of each quantity, and cannot end in a local maximum of it: for each tau the region is the
/// stretch of mu between two edges, which are found whole, and every quantity here rises or falls with mu. With few failures the region is
/// no ellipse: it can be bent, open towards a shape of nothing, or in pieces.
/// Source: Meeker and Escobar, Statistical Methods for Reliability Data, 1998, section 8.3 and appendix B.
/// </remarks>
internal sealed class LikelihoodRegion
{
    /// <summary>
    /// Here a region that does not end is taken to go on for ever. At a shape of exp(-6) = 0.0025 what converges as the shape goes to nothing
    /// is within a quarter of a percent of its end, and further out rounding eats the lognormal; a shape of exp(12) tells ages within a
    /// thousandth of a percent.
    /// </summary>
    private const double LeastTau = -6;
    private const double GreatestTau = 12;

    /// <summary>Below this variance of ln shape the likelihood is near enough to normal for the region to be one piece.</summary>
    private const double KnownShapeVariance = 0.05;

    private readonly LikelihoodSearch search;
    private readonly LikelihoodSearch.Peak peak;
    private readonly LogCovariance? covariance;
    private readonly double drop;
    private readonly double level;
    private readonly bool isKnown;
    private readonly Lazy<List<Piece>> pieces;

    private LikelihoodRegion(LikelihoodSearch search, LikelihoodSearch.Peak peak, LogCovariance? covariance, double confidence)
    {
        this.search = search;
        this.peak = peak;
        this.covariance = covariance;
        isKnown = covariance?.LogShape < KnownShapeVariance;
        drop = Quantile.NormalTwoSided(confidence);
        level = peak.Point.Value - (drop * drop / 2);
        pieces = new Lazy<List<Piece>>(() => covariance is null ? [new Piece(this, peak, peak, 1)] : Cut(Tops(covariance.Value)));
    }

    /// <summary>The region around a maximum over both parameters.</summary>
    internal static LikelihoodRegion Around(LikelihoodSearch search, LikelihoodSearch.Peak peak, LogCovariance covariance, double confidence) =>
        new(search, peak, covariance, confidence);

    /// <summary>The region where the shape is given: one stretch of mu.</summary>
    internal static LikelihoodRegion AtShape(LikelihoodSearch search, LikelihoodSearch.Peak peak, double confidence) =>
        new(search, peak, covariance: null, confidence);

    /// <summary>Least and greatest ln shape; infinite where the region does not end.</summary>
    internal (double Lower, double Upper) Taus() =>
        isKnown && Direct((_, tau) => new LikelihoodPoint(tau, 0, 1, 0, 0, 0)) is { } limits
            ? limits
            : (pieces.Value[0].IsOpenBelow ? double.NegativeInfinity : pieces.Value[0].First.Tau,
                pieces.Value[^1].IsOpenAbove ? double.PositiveInfinity : pieces.Value[^1].Last.Tau);

    /// <summary>Least and greatest value of a quantity; infinite where the region does not limit it.</summary>
    /// <param name="quantity">Its value at (mu, tau), with gradient and Hessian; mu may be negative infinity.</param>
    /// <param name="rises">Whether it rises with mu; else it falls.</param>
    internal (double Lower, double Upper) Limits(Func<double, double, LikelihoodPoint> quantity, bool rises) =>
        isKnown && Direct(quantity) is { } limits
            ? limits
            : (pieces.Value.Min(p => p.Extreme(quantity, rises ? -1 : +1, -1)), pieces.Value.Max(p => p.Extreme(quantity, rises ? +1 : -1, +1)));

    /// <summary>
    /// Both limits by Newton steps from where they would lie if the likelihood were normal; where the shape is known it nearly is. Null where
    /// the steps lead elsewhere.
    /// </summary>
    /// <remarks>Source: Venzon and Moolgavkar, A method for computing profile-likelihood-based confidence intervals, Applied Statistics 37, 1988.</remarks>
    private (double Lower, double Upper)? Direct(Func<double, double, LikelihoodPoint> quantity) =>
        Direct(quantity, -1) is { } lower && Direct(quantity, +1) is { } upper ? (lower, upper) : null;

    private double? Direct(Func<double, double, LikelihoodPoint> quantity, int side)
    {
        var (at, known) = (quantity(peak.Mu, peak.Tau), covariance!.Value);
        var reach = side * drop / Math.Sqrt(known.Variance(at.Mu, at.Tau));
        var (mu, tau) = ((known.LogScale * at.Mu) + (known.Mixed * at.Tau), (known.Mixed * at.Mu) + (known.LogShape * at.Tau));
        var most = 3 * drop * Math.Sqrt(known.LogShape);
        return Touch(quantity, peak.Mu + (reach * mu), peak.Tau + (reach * tau), peak.Tau - most, peak.Tau + most) is { } touch
            && side * (touch.Value.Value - at.Value) > 0
            && side * ((touch.Likelihood.Mu * touch.Value.Mu) + (touch.Likelihood.Tau * touch.Value.Tau)) < 0
                ? touch.Value.Value
                : null;
    }

    /// <summary>
    /// Where the edge of the region touches a curve of equal value, by Newton steps from a point; null where they leave a stretch of shapes.
    /// </summary>
    private (LikelihoodPoint Likelihood, LikelihoodPoint Value)? Touch(
        Func<double, double, LikelihoodPoint> quantity, double mu, double tau, double fromTau, double toTau)
    {
        for (var i = 0; i < 10; i++)
        {
            var (f, v) = (search.At(mu, tau), quantity(mu, tau));
            var (above, turn) = (f.Value - level, (f.Mu * v.Tau) - (f.Tau * v.Mu));
            var turnMu = (f.MuMu * v.Tau) + (f.Mu * v.MuTau) - (f.MuTau * v.Mu) - (f.Tau * v.MuMu);
            var turnTau = (f.MuTau * v.Tau) + (f.Mu * v.TauTau) - (f.TauTau * v.Mu) - (f.Tau * v.MuTau);
            var determinant = (f.Mu * turnTau) - (f.Tau * turnMu);
            var (deltaMu, deltaTau) = (((f.Tau * turn) - (turnTau * above)) / determinant, ((turnMu * above) - (f.Mu * turn)) / determinant);
            if (i > 0 && Math.Abs(above) < 1e-9 && Math.Abs((v.Mu * deltaMu) + (v.Tau * deltaTau)) < 1e-9 * (1 + Math.Abs(v.Value)))
                return (f, v);
            (mu, tau) = (mu + deltaMu, tau + deltaTau);
            if (!(tau >= fromTau && tau <= toTau)) return null;
        }

        return null;
    }

    /// <summary>The best mu for shapes on both sides of the maximum, from the least to the greatest shape.</summary>
    private List<LikelihoodSearch.Peak> Tops(LogCovariance known)
    {
        var step = drop * Math.Sqrt(known.LogShape) / 2;
        var tops = March(peak, -1, step);
        tops.Reverse();
        tops.Add(peak);
        tops.AddRange(March(peak, +1, step));
        return tops;
    }

    /// <summary>The best mu for shapes further and further out on one side, until the region has ended and can be trusted not to go on.</summary>
    private List<LikelihoodSearch.Peak> March(LikelihoodSearch.Peak from, int side, double step)
    {
        var tops = new List<LikelihoodSearch.Peak>();
        var (last, tau) = (from, from.Tau);
        while (true)
        {
            // Below exp(-3) little changes from shape to shape.
            step = Math.Min(1.3 * step, side < 0 && tau < -3 ? 1 : 0.5);
            var end = side < 0 ? LeastTau : IsInside(last) ? GreatestTau : LikelihoodSearch.TauLimit + 1;
            if (side * (end - tau) <= 0 || (isKnown && !IsInside(last))) return tops;
            tau = side * Math.Min(side * end, side * (tau + (side * step)));
            if (Top(tau, last) is { } top) tops.Add(last = top);
        }
    }

    private LikelihoodSearch.Peak? Top(double tau, LikelihoodSearch.Peak near) => isKnown
        ? search.MaximiseAt(tau, near.MuTowards(tau)) ?? search.MaximiseAt(tau, near.Mu)
        : search.GreatestAt(tau, near.MuTowards(tau)) ?? search.GreatestAt(tau, near.Mu);

    private bool IsInside(LikelihoodSearch.Peak top) => top.Point.Value >= level;

    /// <summary>Cuts a row of tops into the pieces inside the region.</summary>
    private List<Piece> Cut(List<LikelihoodSearch.Peak> tops)
    {
        var cut = new List<Piece>();
        LikelihoodSearch.Peak? first = null;
        for (var i = 0; i < tops.Count; i++)
        {
            if (!IsInside(tops[i])) continue;
            first ??= i == 0 ? tops[0] : Tip(tops[i], tops[i - 1]);
            if (i + 1 < tops.Count && IsInside(tops[i + 1])) continue;
            var last = i + 1 == tops.Count ? tops[i] : Tip(tops[i], tops[i + 1]);
            var nodes = isKnown ? 9 : Math.Clamp((int)((last.Tau - first.Tau) * 4), 13, 40);
            cut.Add(new Piece(this, first, last, nodes) { IsOpenBelow = first.Tau <= LeastTau, IsOpenAbove = last.Tau >= GreatestTau });
            first = null;
        }

        return cut;
    }

    /// <summary>Where the region ends between a shape inside and one outside.</summary>
    private LikelihoodSearch.Peak Tip(LikelihoodSearch.Peak inside, LikelihoodSearch.Peak outside)
    {
        var best = inside;
        RootSearch.Find(Excess, inside.Tau, outside.Tau);
        return best;

        double Excess(double tau)
        {
            if (tau == inside.Tau) return inside.Point.Value - level;
            if (tau == outside.Tau) return Math.Max(-1e3, outside.Point.Value - level);
            if (Top(tau, best) is not { } top) return -1e3;
            var excess = top.Point.Value - level;
            if (Math.Abs(excess) <= 1e-12 * Math.Abs(level)) excess = 0; // no more than rounding
            if (excess >= 0 && Math.Abs(top.Tau - outside.Tau) <= Math.Abs(best.Tau - outside.Tau)) best = top;
            return Math.Max(-1e3, excess);
        }
    }

    /// <summary>The edges of the region at one shape.</summary>
    private readonly record struct Slice(LikelihoodSearch.Peak Top, double Lower, double Upper)
    {
        internal double Edge(int side) => side < 0 ? Lower : Upper;
    }

    /// <summary>A piece of the region, sliced at shapes that lie the closer the nearer they are to its tips, where its edge turns.</summary>
    private sealed class Piece
    {
        private readonly LikelihoodRegion region;
        private readonly Slice[] slices;
        private readonly int steps;

        internal Piece(LikelihoodRegion region, LikelihoodSearch.Peak first, LikelihoodSearch.Peak last, int nodes)
        {
            this.region = region;
            (First, Last, steps) = (first, last, nodes - 1);
            slices = new Slice[nodes];
            var near = first;
            for (var j = 0; j < nodes; j++)
            {
                var top = j == 0 ? first : j == steps ? last : Inside(Tau(j), near);
                slices[j] = new Slice(top, Edge(top, -1), Edge(top, +1));
                near = top;
            }
        }

        internal LikelihoodSearch.Peak First { get; }

        internal LikelihoodSearch.Peak Last { get; }

        internal bool IsOpenBelow { get; init; }

        internal bool IsOpenAbove { get; init; }

        /// <summary>The extreme value of a quantity along one edge; infinite where it goes on at an open end.</summary>
        /// <param name="quantity">Its value, with gradient and Hessian.</param>
        /// <param name="edge">The edge: -1 for the least mu, +1 for the greatest.</param>
        /// <param name="side">-1 for the least value, +1 for the greatest.</param>
        internal double Extreme(Func<double, double, LikelihoodPoint> quantity, int edge, int side)
        {
            var values = Array.ConvertAll(slices, s => side * quantity(s.Edge(edge), s.Top.Tau).Value);
            var best = values.Max();
            if (double.IsInfinity(best) || steps == 0) return side * best;
            if (IsOpenBelow && values[0] == best) return side * AtOpenEnd(0, +1);
            if (IsOpenAbove && values[steps] == best) return side * AtOpenEnd(steps, -1);
            for (var j = 0; j <= steps; j++)
            {
                var (left, right) = (Math.Max(0, j - 1), Math.Min(steps, j + 1));
                if (values[j] < values[left] || values[j] < values[right]) continue;
                best = Math.Max(best, Touch(j) is { } touch ? side * touch : -Minimum.Find(x => -Value(Tau(x), slices[j].Top), left, right));
            }

            return side * best;

            double Value(double tau, LikelihoodSearch.Peak near)
            {
                var top = Inside(tau, near);
                return side * quantity(Edge(top, edge), top.Tau).Value;
            }

            double AtOpenEnd(int end, int inwards)
            {
                // What converges does so in proportion to the shape (or to one over it), so that a step of one in tau leaves 1/(e - 1) of it.
                var gain = best - Value(Tau(end) + inwards, slices[end].Top);
                return Math.Abs(gain) < 0.1 ? best + (gain / (Math.E - 1)) : double.PositiveInfinity;
            }

            double? Touch(int j) =>
                region.Touch(quantity, slices[j].Edge(edge), slices[j].Top.Tau, Tau(j - 1), Tau(j + 1)) is { } touch
                && side * touch.Value.Value >= values[j] && edge * touch.Likelihood.Mu <= 0
                    ? touch.Value.Value
                    : null;
        }

        /// <summary>Shapes by number, and between them: cosines, so that an edge that turns at a tip is smooth in the number.</summary>
        private double Tau(double x) =>
            x <= 0 ? First.Tau
            : x >= steps ? Last.Tau
            : ((First.Tau + Last.Tau) / 2) - ((Last.Tau - First.Tau) / 2 * Math.Cos(Math.PI * x / steps));

        /// <summary>The best mu at a shape of this piece; the nearest known one where it is found outside.</summary>
        private LikelihoodSearch.Peak Inside(double tau, LikelihoodSearch.Peak near) =>
            region.Top(tau, near) is { } top && region.IsInside(top) ? top : near;

        private double Edge(LikelihoodSearch.Peak top, int side) =>
            region.search.Outermost(top, region.level, side, everyHill: !region.isKnown);
    }
}
