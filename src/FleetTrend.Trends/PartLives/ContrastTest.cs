namespace FleetTrend.Trends.PartLives;

/// <summary>One of the two tests of a base against the others.</summary>
/// <param name="PValue">Two-sided chance of a difference at least this large, were there none.</param>
/// <param name="QValue">The same after allowing for every test of every base and part kind.</param>
/// <param name="Finding">What follows.</param>
public sealed record ContrastTest(double PValue, double QValue, ContrastFinding Finding);
