using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The log-likelihood at (mu, tau), mu = ln scale and tau = ln shape, with its gradient and Hessian.
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct LikelihoodPoint(
    double Value, double Mu, double Tau, double MuMu, double MuTau, double TauTau)
{
    /// <summary>Where the likelihood underflows: every search step back from here is an improvement.</summary>
    internal static readonly LikelihoodPoint Impossible = new(double.NegativeInfinity, 0, 0, 0, 0, 0);

    /// <summary>This point, or <see cref="Impossible"/> when any part overflowed.</summary>
    internal LikelihoodPoint OrImpossible() =>
        double.IsFinite(Value) && double.IsFinite(Mu) && double.IsFinite(Tau)
        && double.IsFinite(MuMu) && double.IsFinite(MuTau) && double.IsFinite(TauTau)
            ? this
            : Impossible;

    public static LikelihoodPoint operator +(LikelihoodPoint a, LikelihoodPoint b) => new(
        a.Value + b.Value, a.Mu + b.Mu, a.Tau + b.Tau, a.MuMu + b.MuMu, a.MuTau + b.MuTau, a.TauTau + b.TauTau);
}
