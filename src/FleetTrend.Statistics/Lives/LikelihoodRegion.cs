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
    private readonly double level;
    private readonly bool isKnown;
    private readonly List<Piece> pieces = [];

    private LikelihoodRegion(LikelihoodSearch search, LikelihoodSearch.Peak peak, double confidence, bool isKnown)
    {
        this.search = search;
        this.isKnown = isKnown;
        var drop = Quantile.NormalTwoSided(confidence);
        level = peak.Point.Value - (drop * drop / 2);
    }

    /// <summary>The region around a maximum over both parameters.</summary>
    internal static LikelihoodRegion Around(LikelihoodSearch search, LikelihoodSearch.Peak peak, double logShapeVariance, double confidence)
    {
        var region = new LikelihoodRegion(search, peak, confidence, logShapeVariance < KnownShapeVariance);
        var step = Quantile.NormalTwoSided(confidence) * Math.Sqrt(logShapeVariance) / 2;
        var tops = region.March(peak, -1, step);
        tops.Reverse();
        tops.Add(peak);
        tops.AddRange(region.March(peak, +1, step));
        region.Cut(tops);
        return region;
    }

    /// <summary>The region where the shape is given: one stretch of mu.</summary>
    internal static LikelihoodRegion AtShape(LikelihoodSearch search, LikelihoodSearch.Peak peak, double confidence)
    {
        var region = new LikelihoodRegion(search, peak, confidence, isKnown: false);
        region.pieces.Add(new Piece(region, peak, peak, 1));
        return region;
    }

    /// <summary>Least and greatest ln shape; infinite where the region does not end.</summary>
    internal (double Lower, double Upper) Taus() => (
        pieces[0].IsOpenBelow ? double.NegativeInfinity : pieces[0].First.Tau,
        pieces[^1].IsOpenAbove ? double.PositiveInfinity : pieces[^1].Last.Tau);

    /// <summary>Least and greatest value of a quantity; infinite where the region does not limit it.</summary>
    /// <param name="quantity">Its value at (mu, tau), with gradient and Hessian; mu may be negative infinity.</param>
    /// <param name="rises">Whether it rises with mu; else it falls.</param>
    internal (double Lower, double Upper) Limits(Func<double, double, LikelihoodPoint> quantity, bool rises) => (
        pieces.Min(p => p.Extreme(quantity, rises ? -1 : +1, -1)),
        pieces.Max(p => p.Extreme(quantity, rises ? +1 : -1, +1)));

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
    private void Cut(List<LikelihoodSearch.Peak> tops)
    {
        LikelihoodSearch.Peak? first = null;
        for (var i = 0; i < tops.Count; i++)
        {
            if (!IsInside(tops[i])) continue;
            first ??= i == 0 ? tops[0] : Tip(tops[i], tops[i - 1]);
            if (i + 1 < tops.Count && IsInside(tops[i + 1])) continue;
            var last = i + 1 == tops.Count ? tops[i] : Tip(tops[i], tops[i + 1]);
            var nodes = isKnown ? 9 : Math.Clamp((int)((last.Tau - first.Tau) * 4), 13, 40);
            pieces.Add(new Piece(this, first, last, nodes) { IsOpenBelow = first.Tau <= LeastTau, IsOpenAbove = last.Tau >= GreatestTau });
            first = null;
        }
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

            // Where the edge touches a curve of equal value, by Newton steps from a slice; null where they lead away from it.
            double? Touch(int j)
            {
                var (mu, tau) = (slices[j].Edge(edge), slices[j].Top.Tau);
                var (from, to) = (Tau(j - 1), Tau(j + 1));
                for (var i = 0; i < 10; i++)
                {
                    var (f, v) = (region.search.At(mu, tau), quantity(mu, tau));
                    var (above, turn) = (f.Value - region.level, (f.Mu * v.Tau) - (f.Tau * v.Mu));
                    var turnMu = (f.MuMu * v.Tau) + (f.Mu * v.MuTau) - (f.MuTau * v.Mu) - (f.Tau * v.MuMu);
                    var turnTau = (f.MuTau * v.Tau) + (f.Mu * v.TauTau) - (f.TauTau * v.Mu) - (f.Tau * v.MuTau);
                    var determinant = (f.Mu * turnTau) - (f.Tau * turnMu);
                    var (deltaMu, deltaTau) = (((f.Tau * turn) - (turnTau * above)) / determinant, ((turnMu * above) - (f.Mu * turn)) / determinant);
                    if (i > 0 && Math.Abs(above) < 1e-9 && Math.Abs((v.Mu * deltaMu) + (v.Tau * deltaTau)) < 1e-9 * (1 + Math.Abs(v.Value)))
                        return side * v.Value >= values[j] && edge * f.Mu <= 0 ? v.Value : null;
                    (mu, tau) = (mu + deltaMu, tau + deltaTau);
                    if (!(tau >= from && tau <= to)) return null;
                }

                return null;
            }
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
