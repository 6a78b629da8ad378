namespace FleetTrend.Store.Histories;

/// <summary>A record of a batch that is to be written.</summary>
internal sealed record AcceptedRecord(int SourceId, NewRecord.ToStore Record);
