using System.Numerics;
using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>Arithmetic on several numbers at a time; logarithms and exponentials accurate near zero too.</summary>
internal static class Vectors
{
    internal static int PaddedLength(int count) =>
        (count + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count;

    internal static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var xs = MemoryMarshal.Cast<double, Vector<double>>(x);
        var ys = MemoryMarshal.Cast<double, Vector<double>>(y);
        var sums = Vector<double>.Zero;
        for (var i = 0; i < xs.Length; i++) sums += xs[i] * ys[i];
        var sum = Vector.Sum(sums);
        for (var i = xs.Length * Vector<double>.Count; i < x.Length; i++) sum += x[i] * y[i];
        return sum;
    }

    internal static void LogInPlace(double[] values)
    {
        foreach (ref var v in MemoryMarshal.Cast<double, Vector<double>>(values.AsSpan())) v = Vector.Log(v);
    }

    /// <summary>ln(1 + x) with x's own relative accuracy.</summary>
    internal static void LogP1InPlace(double[] values)
    {
        foreach (ref var v in MemoryMarshal.Cast<double, Vector<double>>(values.AsSpan()))
        {
            // The rounding of 1 + x is undone to first order: log(u) + (x - (u - 1)) / u with u = fl(1 + x).
            var u = Vector<double>.One + v;
            v = Vector.Log(u) + ((v - (u - Vector<double>.One)) / u);
        }
    }

    /// <summary>e^x - 1 with x's own relative accuracy.</summary>
    internal static Vector<double> ExpM1(Vector<double> x) =>
        Vector.ConditionalSelect(IsNearZero(x), ExpM1NearZero(x), Vector.Exp(x) - Vector<double>.One);

    /// <summary>e^(z + width) - e^z with the width's own relative accuracy, for widths that are too great for e^width, too.</summary>
    /// <param name="exp">e^z.</param>
    /// <param name="end">z + width.</param>
    /// <param name="width">The width.</param>
    internal static Vector<double> ExpDifference(Vector<double> exp, Vector<double> end, Vector<double> width) =>
        Vector.ConditionalSelect(IsNearZero(width), exp * ExpM1NearZero(width), Vector.Exp(end) - exp);

    private static Vector<long> IsNearZero(Vector<double> x) => Vector.LessThan(Vector.Abs(x), new Vector<double>(0.05));

    private static Vector<double> ExpM1NearZero(Vector<double> x)
    {
        var series = Vector<double>.One + (x * (1.0 / 10));
        for (var term = 9; term >= 2; term--) series = Vector<double>.One + (x * series * (1.0 / term));
        return x * series;
    }
}
