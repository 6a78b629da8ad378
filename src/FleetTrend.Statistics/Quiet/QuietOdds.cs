namespace FleetTrend.Statistics.Quiet;

/// <summary>How much better "few of its findings are written down" fits a unit than "it is as the others are".</summary>
/// <param name="Log">Natural logarithm of the odds.</param>
/// <param name="Since">The period since when, most probably.</param>
/// <param name="Found">Findings since then.</param>
/// <param name="Expected">Findings expected since then at the rates that the others have had since then.</param>
public sealed record QuietOdds(double Log, int Since, int Found, double Expected)
{
    /// <summary>
    /// The odds from which it is asked about. With it, and with looking again every four weeks, fewer than one ordinary unit is asked about in 50
    /// unit-years: measured by simulation, CALLS.md.
    /// </summary>
    public const double Limit = 9;

    /// <summary>It is asked about only where it has at most this share of what the others would have.</summary>
    public const double MostFound = 1.0 / 3;

    /// <summary>Whether to ask.</summary>
    public bool IsAsked => Log >= Math.Log(Limit) && Found <= MostFound * Expected;
}
