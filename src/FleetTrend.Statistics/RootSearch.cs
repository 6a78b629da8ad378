namespace FleetTrend.Statistics;

/// <summary>The root of a continuous function, where it changes sign, by Chandrupatla's method: never outside the bracket, never without end.</summary>
internal static class RootSearch
{
    private const int MaximumSteps = 300;

    /// <summary>The root between two points of opposite sign, to the last digits of the argument.</summary>
    /// <remarks>Source: Chandrupatla 1997, Advances in Engineering Software 28 (inverse quadratic steps guarded by bisection).</remarks>
    internal static double Find(Func<double, double> function, double low, double high)
    {
        var (a, b) = (low, high);
        var (fa, fb) = (function(a), function(b));
        if (fa == 0)
            return a;
        if (fb == 0)
            return b;
        var (c, fc) = (a, fa);
        var step = 0.5;
        for (var k = 0; k < MaximumSteps; k++)
        {
            var x = a + step * (b - a);
            var fx = function(x);
            if (Math.Sign(fx) == Math.Sign(fa))
                (c, fc, a, fa) = (a, fa, x, fx);
            else
                (c, fc, b, fb, a, fa) = (b, fb, a, fa, x, fx);
            var best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            var tolerance = 4e-16 * Math.Abs(best) + 1e-300;
            var share = tolerance / Math.Abs(b - a);
            if (share > 0.5 || fx == 0)
                return best;
            step = Math.Clamp(NextStep(a, b, c, fa, fb, fc), share, 1 - share);
        }
        return Math.Abs(fa) < Math.Abs(fb) ? a : b;
    }

    private static double NextStep(double a, double b, double c, double fa, double fb, double fc)
    {
        var xi = (a - b) / (c - b);
        var phi = (fa - fb) / (fc - fb);
        if (!(1 - Math.Sqrt(1 - xi) < phi && phi < Math.Sqrt(xi)))
            return 0.5;
        return fa / (fb - fa) * (fc / (fb - fc)) + (c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb));
    }
}
