using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>A record and the day by which it is put in order.</summary>
internal sealed record DatedRecord(DateOnly Date, Record Record);
