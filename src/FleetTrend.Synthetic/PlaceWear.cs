using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>A condition at a constant rate per 1,000 h.</summary>
internal sealed record PlaceWear(Condition Condition, double RatePer1000Hours);
