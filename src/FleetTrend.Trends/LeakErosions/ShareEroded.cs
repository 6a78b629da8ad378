namespace FleetTrend.Trends.LeakErosions;

/// <summary>How many port faces had eroded after a leak was left for some flight hours.</summary>
/// <param name="Hours">Flight hours since the first trace.</param>
/// <param name="Known">Faces found eroded not later.</param>
/// <param name="Good">Faces found good then or later.</param>
/// <param name="Share">Share eroded by then; what lies between looks is estimated.</param>
public sealed record ShareEroded(double Hours, int Known, int Good, Figure Share);
