namespace FleetTrend.Records.Findings;

/// <summary>A person's decision that a finding of one source is the same event as one of another source.</summary>
/// <param name="KeptSource">Source of the finding that stands.</param>
/// <param name="KeptRecordId">That source's identifier of it.</param>
/// <param name="MergedSource">Source of the finding that counts as the same event, seen at the same look.</param>
/// <param name="MergedRecordId">That source's identifier of it.</param>
public sealed record FindingMerge(string KeptSource, string KeptRecordId, string MergedSource, string MergedRecordId);
