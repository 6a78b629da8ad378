namespace FleetTrend.Statistics.Decisions;

/// <summary>Stated chances of about one size, beside what happened.</summary>
/// <param name="From">The least of the chances.</param>
/// <param name="To">The greatest of them.</param>
/// <param name="Count">How many.</param>
/// <param name="Expected">Their sum: how many were foreseen.</param>
/// <param name="Found">How many happened.</param>
/// <param name="Lower">Least count that the chances leave open.</param>
/// <param name="Upper">Greatest count that the chances leave open.</param>
public sealed record CalibrationBin(double From, double To, int Count, double Expected, int Found, int Lower, int Upper)
{
    /// <summary>Whether what happened lies outside of what the chances leave open.</summary>
    public bool IsOff => Found < Lower || Found > Upper;
}
