namespace FleetTrend.Records.Sources;

/// <summary>Takes a record back: from its acceptance on, the record of that source and identifier counts as never pushed.</summary>
/// <param name="Reason">Why, for people.</param>
public sealed record Retraction(string Reason);
