namespace FleetTrend.Trends.Repeats;

/// <summary>What the other aircraft of the type group had at a location where a condition came back on one, over all hours watched there.</summary>
/// <param name="Count">Other aircraft watched there.</param>
/// <param name="Found">Their events that count in a rate.</param>
/// <param name="Hours">Hours that they were watched there.</param>
public sealed record RepeatOthers(int Count, int Found, double Hours);
