using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>How far one Newton step moves a fit when a unit's lives are left out. Source: Lipsitz, Dear and Zhao 1994 (jackknife by clusters).</summary>
/// <param name="Mu">Of ln scale.</param>
/// <param name="Tau">Of ln shape.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct UnitStep(double Mu, double Tau)
{
    /// <summary>The step; null where the rest alone has no peak near.</summary>
    internal static UnitStep? Without(LikelihoodPoint unit, LikelihoodPoint all)
    {
        if (unit == all) return default(UnitStep); // a single unit: it has no weight in what is shared
        var (a, b, c) = (unit.MuMu - all.MuMu, unit.MuTau - all.MuTau, unit.TauTau - all.TauTau);
        var determinant = (a * c) - (b * b);
        if (!(a > 0 && determinant > 1e-10 * a * c)) return null;
        return new UnitStep(((b * unit.Tau) - (c * unit.Mu)) / determinant, ((b * unit.Mu) - (a * unit.Tau)) / determinant);
    }
}
