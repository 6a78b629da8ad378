using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Looks;

/// <summary>Lines of inspections that say of a location, since its last look, that it was not examined.</summary>
/// <param name="Date">The newest of them.</param>
/// <param name="IsPossible">False where the newest says that it could not be examined, true where it was only not looked at.</param>
/// <param name="Count">How many days have such a line.</param>
/// <param name="Evidence">The inspections of the newest day.</param>
public sealed record PassedOver(DateOnly Date, bool IsPossible, int Count, IReadOnlyList<RecordKey> Evidence);
