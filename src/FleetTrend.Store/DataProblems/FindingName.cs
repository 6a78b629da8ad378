namespace FleetTrend.Store.DataProblems;

/// <summary>A finding, whatever its revision.</summary>
/// <param name="Source">Name of the source.</param>
/// <param name="SourceRecordId">The source's identifier.</param>
public sealed record FindingName(string Source, string SourceRecordId);
