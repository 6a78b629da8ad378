namespace FleetTrend.Records.Sources;

/// <summary>The identity of one pushed record: who pushed it, what they call it, and which revision it is.</summary>
/// <param name="Source">Name of the source, such as <c>shop-cards</c>.</param>
/// <param name="SourceRecordId">The source's own identifier; unique within the source across all record kinds.</param>
/// <param name="Revision">1 for the first; a higher revision supersedes the lower ones.</param>
public sealed record RecordKey(string Source, string SourceRecordId, int Revision);
