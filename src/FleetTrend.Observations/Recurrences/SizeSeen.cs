using FleetTrend.Records;

namespace FleetTrend.Observations.Recurrences;

/// <summary>A size measured at a look.</summary>
/// <param name="At">Time in service.</param>
/// <param name="Millimetres">Length or depth.</param>
public sealed record SizeSeen(Hours At, double Millimetres);
