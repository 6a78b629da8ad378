using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Store.Histories;

/// <summary>A revision as stored.</summary>
/// <param name="Id">Ascends with storing; it means nothing else.</param>
/// <param name="Key">Its identity.</param>
/// <param name="AcceptTime">Since when it is known (UTC).</param>
/// <param name="Content">What it says.</param>
public sealed record StoredRecord(long Id, RecordKey Key, DateTimeOffset AcceptTime, RecordContent Content);
