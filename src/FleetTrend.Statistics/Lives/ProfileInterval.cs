using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Profile-likelihood limits: the values at which the log-likelihood, maximised over the rest, has fallen by half the chi-square quantile.
/// </summary>
/// <remarks>Source: Meeker and Escobar, Statistical Methods for Reliability Data, 1998, section 8.3.</remarks>
internal static class ProfileInterval
{
    private const double TowardsEdge = 1e-9;

    /// <summary>A second start, far out on a wide law: from a narrow one the likelihood can be too steep to find the way.</summary>
    private const double SmallTau = -8;

    /// <summary>
    /// The two limits of a quantity v near its estimate; an infinite limit where the profile never falls so far.
    /// </summary>
    /// <param name="search">The likelihood.</param>
    /// <param name="peak">Its maximum.</param>
    /// <param name="pathAt">The path on which the quantity has a value.</param>
    /// <param name="estimate">The quantity at the maximum.</param>
    /// <param name="standardError">Its standard error, for the first guess.</param>
    /// <param name="confidence">Confidence.</param>
    internal static (double Lower, double Upper) Limits(
        LikelihoodSearch search, LikelihoodSearch.Peak peak, Func<double, LikelihoodPath> pathAt, double estimate, double standardError,
        double confidence)
    {
        var drop = Normal.InvCDF(0, 1, (1 + confidence) / 2);
        return (Limit(-1), Limit(+1));

        double Limit(int side)
        {
            var (mu, tau) = (peak.Mu, peak.Tau);

            // Root of the signed root of the likelihood ratio, nearly a straight line in v.
            double Excess(double v)
            {
                var path = pathAt(v);
                var top = search.Maximise(path, path.Nearest(mu, tau));
                if (!top.IsSettled && search.Maximise(path, path.Nearest(mu, SmallTau)) is var other && other.Value > top.Value) top = other;
                if (top.IsSettled) (mu, tau) = (top.Position.Mu, top.Position.Tau);
                return Math.Sqrt(Math.Max(0, 2 * (peak.Point.Value - top.Value))) - drop;
            }

            var (near, nearExcess) = (estimate, -drop);
            var far = estimate + (side * drop * standardError);
            var farExcess = Excess(far);
            for (var i = 0; farExcess < 0; i++)
            {
                var reach = Math.Abs(far - estimate);
                if (i == 40 || reach > 700 || pathAt(far).IsBeyondLimit) return side * double.PositiveInfinity;
                (near, nearExcess) = (far, farExcess);
                far = estimate + (side * reach * Math.Min(2, 1.05 * drop / Math.Max(drop + farExcess, drop / 2)));
                farExcess = Excess(far);
                if (i > 5 && farExcess < 0 && farExcess - nearExcess < TowardsEdge) return side * double.PositiveInfinity;
            }

            return Root(Excess, near, nearExcess, far, farExcess, 1e-8 * standardError);
        }
    }

    /// <summary>Secant steps inside a bracket (the Illinois rule), until a step is below <paramref name="tolerance"/>.</summary>
    private static double Root(Func<double, double> f, double low, double fLow, double high, double fHigh, double tolerance)
    {
        for (var i = 0; i < 60; i++)
        {
            var middle = high - (fHigh * (high - low) / (fHigh - fLow));
            if (!double.IsFinite(middle)) middle = (low + high) / 2;
            var value = f(middle);
            if (Math.Abs(value) < 1e-10 || Math.Abs(middle - high) < tolerance) return middle;
            if (Math.Sign(value) == Math.Sign(fHigh)) fLow /= 2;
            else (low, fLow) = (high, fHigh);
            (high, fHigh) = (middle, value);
        }

        return high;
    }
}
