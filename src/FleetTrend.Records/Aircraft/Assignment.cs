namespace FleetTrend.Records.Aircraft;

/// <summary>From a day on, an aircraft belongs to a base and a type group; the latest not after a day holds on it.</summary>
/// <param name="FromDate">First day; exposure before the first assignment counts to the first assignment.</param>
/// <param name="Base">Where it is maintained; its shop gets the report.</param>
/// <param name="TypeGroup">Aircraft alike for the systems watched; norms are computed inside it.</param>
public sealed record Assignment(DateOnly FromDate, string Base, string TypeGroup);
