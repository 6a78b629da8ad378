namespace FleetTrend.Records.Sources;

/// <summary>A record as the store knows it: what was pushed, under which key, and since when it is known.</summary>
/// <param name="Key">Its identity; the evidence behind every number is a list of these.</param>
/// <param name="AcceptTime">When it was accepted (UTC); a query as of an earlier moment does not see it.</param>
/// <param name="Content">What was recorded.</param>
/// <typeparam name="T">The kind of record.</typeparam>
public sealed record Recorded<T>(RecordKey Key, DateTimeOffset AcceptTime, T Content);
