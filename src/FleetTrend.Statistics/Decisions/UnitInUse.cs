namespace FleetTrend.Statistics.Decisions;

/// <summary>An aircraft: its parts of one kind, and the hours that it will fly.</summary>
/// <param name="Parts">The parts in service.</param>
/// <param name="HoursAhead">Hours ahead by each horizon, in the order of the horizons.</param>
public sealed record UnitInUse(IReadOnlyList<PartInUse> Parts, IReadOnlyList<HoursAhead> HoursAhead);
