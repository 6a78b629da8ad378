namespace FleetTrend.Records.Inspections;

/// <summary>Whether one location was looked at during an inspection, and how.</summary>
/// <param name="Location">Path of the location.</param>
/// <param name="State">Examined, not examined, or could not be examined.</param>
/// <param name="Method">How it was looked at; <see cref="LookMethod.Unspecified"/> where not told or not examined.</param>
public sealed record LocationLook(string Location, LookState State, LookMethod Method = LookMethod.Unspecified);
