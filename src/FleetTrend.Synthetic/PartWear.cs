using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>A condition that ends a life: Weibull shape, and scale in hours.</summary>
internal sealed record PartWear(Condition Condition, double Shape, double ScaleHours);
