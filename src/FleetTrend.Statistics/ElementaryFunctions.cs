namespace FleetTrend.Statistics;

/// <summary>Elementary functions that keep their relative accuracy where the plain formula cancels.</summary>
internal static class ElementaryFunctions
{
    /// <summary>ln(1 + x), x above -1.</summary>
    internal static double LogP1(double x)
    {
        var u = 1 + x;
        return double.IsPositiveInfinity(u) ? u : Math.Log(u) + ((x - (u - 1)) / u);
    }

    /// <summary>e^x - 1.</summary>
    internal static double ExpM1(double x)
    {
        if (Math.Abs(x) > 0.05) return Math.Exp(x) - 1;
        var series = 1 + (x / 10);
        for (var term = 9; term >= 2; term--) series = 1 + (x * series / term);
        return x * series;
    }

    /// <summary>1 - e^-x.</summary>
    internal static double OneMinusExp(double x) => -ExpM1(-x);

    /// <summary>ln(1 - e^-x) for x above 0.</summary>
    internal static double Log1MExp(double x) =>
        x > 1 ? LogP1(-Math.Exp(-x)) : Math.Log(OneMinusExp(x));

    /// <summary>ln(e^x - 1) for x above 0.</summary>
    internal static double LogExpM1(double x) => x + Log1MExp(x);
}
