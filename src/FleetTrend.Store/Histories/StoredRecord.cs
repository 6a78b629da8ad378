using FleetTrend.Records.Sources;

namespace FleetTrend.Store.Histories;

/// <summary>A revision as stored.</summary>
/// <param name="Id">Ascends with storing; it means nothing else.</param>
/// <param name="Key">Its identity.</param>
/// <param name="AcceptTime">Since when it is known (UTC).</param>
/// <param name="Content">A type of FleetTrend.Records, as in <see cref="NewRecord"/>.</param>
public sealed record StoredRecord(long Id, RecordKey Key, DateTimeOffset AcceptTime, object Content);
