namespace FleetTrend.Statistics;

/// <summary>Where a continuous function is least, by Brent's method: parabolas where they help, golden sections where they do not.</summary>
internal static class Minimum
{
    private const double Golden = 0.3819660112501051;
    private const int MaximumSteps = 100;

    /// <summary>The least value met inside an interval; the argument is found to about the root of the digits, the value to nearly all.</summary>
    /// <remarks>Source: Brent 1973, Algorithms for Minimization without Derivatives, chapter 5.</remarks>
    internal static double Find(Func<double, double> function, double low, double high)
    {
        var best = low + (Golden * (high - low));
        var (second, third) = (best, best);
        var value = function(best);
        var (secondValue, thirdValue) = (value, value);
        double step = 0, before = 0;
        for (var k = 0; k < MaximumSteps; k++)
        {
            var middle = (low + high) / 2;
            var tolerance = (1e-7 * Math.Abs(best)) + 1e-9;
            if (Math.Abs(best - middle) <= (2 * tolerance) - ((high - low) / 2)) break;
            if (Math.Abs(before) > tolerance && Vertex(best, second, third, value, secondValue, thirdValue) is var (p, q)
                && Math.Abs(p) < Math.Abs(q * before / 2) && p > q * (low - best) && p < q * (high - best))
            {
                (before, step) = (step, p / q);
            }
            else
            {
                before = (best < middle ? high : low) - best;
                step = Golden * before;
            }

            var next = best + (Math.Abs(step) >= tolerance ? step : Math.Sign(step) * tolerance);
            var nextValue = function(next);
            if (nextValue <= value)
            {
                if (next < best) high = best;
                else low = best;
                (third, thirdValue, second, secondValue, best, value) = (second, secondValue, best, value, next, nextValue);
                continue;
            }

            if (next < best) low = next;
            else high = next;
            if (nextValue <= secondValue || second == best) (third, thirdValue, second, secondValue) = (second, secondValue, next, nextValue);
            else if (nextValue <= thirdValue || third == best || third == second) (third, thirdValue) = (next, nextValue);
        }

        return value;
    }

    /// <summary>The way from the best of three points to the vertex of the parabola through them, as a numerator and a denominator above 0.</summary>
    private static (double Numerator, double Denominator) Vertex(
        double best, double second, double third, double value, double secondValue, double thirdValue)
    {
        var r = (best - second) * (value - thirdValue);
        var q = (best - third) * (value - secondValue);
        var p = ((best - third) * q) - ((best - second) * r);
        q = 2 * (q - r);
        return q > 0 ? (-p, q) : (p, -q);
    }
}
