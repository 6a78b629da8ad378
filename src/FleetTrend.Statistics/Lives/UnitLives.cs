namespace FleetTrend.Statistics.Lives;

/// <summary>Lives of one unit (aircraft) in two sets, such as after two kinds of repair; either may be empty.</summary>
/// <param name="First">Its lives in the first set.</param>
/// <param name="Second">Its lives in the second set.</param>
public sealed record UnitLives(IReadOnlyList<Life> First, IReadOnlyList<Life> Second);
