using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>Variances and covariance of ln scale and ln shape.</summary>
/// <param name="LogScale">Variance of ln scale.</param>
/// <param name="LogShape">Variance of ln shape; 0 where the shape was given.</param>
/// <param name="Mixed">Their covariance.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct LogCovariance(double LogScale, double LogShape, double Mixed)
{
    /// <summary>Inverse of the negative Hessian, or null where that is not positive definite.</summary>
    internal static LogCovariance? Invert(LikelihoodPoint point)
    {
        var determinant = (point.MuMu * point.TauTau) - (point.MuTau * point.MuTau);
        return point.MuMu < 0 && determinant > 1e-14 * point.MuMu * point.TauTau
            ? new LogCovariance(-point.TauTau / determinant, -point.MuMu / determinant, point.MuTau / determinant)
            : null;
    }

    /// <summary>Variance of a quantity with these derivatives in ln scale and ln shape.</summary>
    internal double Variance(double ofLogScale, double ofLogShape) =>
        Math.Max(0, (ofLogScale * ofLogScale * LogScale) + (2 * ofLogScale * ofLogShape * Mixed) + (ofLogShape * ofLogShape * LogShape));

    /// <summary>
    /// What one standard deviation of each of two independent errors makes of a quantity with these derivatives; the squares sum to its variance.
    /// Source: Cholesky.
    /// </summary>
    internal (double First, double Second) Errors(double ofLogScale, double ofLogShape)
    {
        var first = Math.Sqrt(Math.Max(0, LogScale));
        var mixed = first > 0 ? Mixed / first : 0;
        return ((first * ofLogScale) + (mixed * ofLogShape), Math.Sqrt(Math.Max(0, LogShape - (mixed * mixed))) * ofLogShape);
    }
}
