using FleetTrend.Statistics.Norms;

namespace FleetTrend.Trends.Positions;

/// <summary>Findings of one aircraft at each position, as a comparison needs them; aircraft that are alike in this stand once.</summary>
/// <param name="Findings">At each position.</param>
/// <param name="ExposureTenths">Tenths of hours watched at each position; null where they are equal.</param>
/// <param name="Times">Aircraft.</param>
public sealed record AircraftAtPositions(IReadOnlyList<int> Findings, IReadOnlyList<long>? ExposureTenths, int Times)
{
    internal PositionUnit ToUnit() => new(Findings, [.. ExposureTenths?.Select(t => (double)t) ?? Findings.Select(_ => 1.0)], Times);
}
