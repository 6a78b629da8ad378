using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>Time in service known on a day, and the records that say so. A visit says it directly, a reading through its meter.</summary>
internal sealed record HoursPoint(DateOnly Date, Hours Hours, bool IsVisit, IReadOnlyList<RecordKey> Keys);
