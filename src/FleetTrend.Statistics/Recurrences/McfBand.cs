using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Random;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// How wide a band must be, in standard errors, to hold a whole path at the stated confidence: the quantile of the largest
/// standardised departure of a normal process that has the covariance of the units' influences.
/// </summary>
internal static class McfBand
{
    private const int GridLimit = 60;

    /// <summary>Equally spaced picks of the ages, at most sixty of them.</summary>
    public static double[] Grid(double[] times)
    {
        var size = Math.Min(GridLimit, times.Length);
        return [.. Enumerable.Range(0, size).Select(k => times[(int)((k + 1L) * times.Length / size) - 1])];
    }

    /// <summary>The quantile, by seeded simulation.</summary>
    /// <param name="paths">Each unit's influence at the grid's ages.</param>
    /// <param name="size">Ages in the grid.</param>
    /// <param name="confidence">Confidence of the band.</param>
    /// <param name="simulations">Simulated paths.</param>
    /// <param name="seed">Their seed.</param>
    public static double Quantile(IEnumerable<double[]> paths, int size, double confidence, int simulations, int seed)
    {
        var covariance = Matrix<double>.Build.Dense(size, size);
        foreach (var path in paths)
        {
            for (var i = 0; i < size; i++)
            {
                for (var j = 0; j <= i; j++)
                    covariance[i, j] += path[i] * path[j];
            }
        }
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j < i; j++)
                covariance[j, i] = covariance[i, j];
        }

        var root = Root(covariance);
        var random = new MersenneTwister(seed, threadSafe: false);
        var normal = new double[size];
        var largest = new double[simulations];
        for (var s = 0; s < simulations; s++)
        {
            Normal.Samples(random, normal, 0, 1);
            var path = root * Vector<double>.Build.Dense(normal);
            for (var k = 0; k < size; k++)
            {
                var error = Math.Sqrt(covariance[k, k]);
                largest[s] = Math.Max(largest[s], error > 0 ? Math.Abs(path[k]) / error : 0);
            }
        }
        Array.Sort(largest);
        return largest[Math.Min(simulations - 1, (int)Math.Ceiling(confidence * simulations))];
    }

    /// <summary>A square root by eigenvalues, since the covariance of few units has no full rank.</summary>
    private static Matrix<double> Root(Matrix<double> covariance)
    {
        var eigen = covariance.Evd(Symmetricity.Symmetric);
        var scale = eigen.EigenValues.Select(v => Math.Sqrt(Math.Max(0, v.Real)));
        return eigen.EigenVectors * Matrix<double>.Build.DenseOfDiagonalVector(Vector<double>.Build.DenseOfEnumerable(scale));
    }
}
