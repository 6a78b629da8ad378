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
    internal static Vector<double> ExpM1(Vector<double> x)
    {
        var series = Vector<double>.One + (x * (1.0 / 10));
        for (var term = 9; term >= 2; term--) series = Vector<double>.One + (x * series * (1.0 / term));
        var nearZero = Vector.LessThan(Vector.Abs(x), new Vector<double>(0.05));
        return Vector.ConditionalSelect(nearZero, x * series, Vector.Exp(x) - Vector<double>.One);
    }
}
