namespace FleetTrend.Trends.PartLives;

/// <summary>One of the two tests of a base against the others.</summary>
/// <param name="PValue">Two-sided chance of a difference at least this large, were there none; approximate, so not to be quoted beyond 1 in 1,000.</param>
/// <param name="QValue">The same after allowing for every test of every base and part kind.</param>
/// <param name="Finding">What follows.</param>
public sealed record ContrastTest(double PValue, double QValue, ContrastFinding Finding);
