using FleetTrend.Trends.Positions;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Whether a cylinder or side is worse, as the contract writes it.</summary>
internal static class PositionMessages
{
    public static Wire.PositionTrend ToWire(this PositionTrend trend) => new()
    {
        TypeGroups = { trend.TypeGroups },
        Kind = trend.Kind,
        Condition = (Wire.Condition)trend.Condition,
        Sort = (Wire.PositionSort)trend.Sort,
        AircraftCount = trend.Aircraft,
        Positions = { trend.Positions.Select(ToWire) },
        Statement = PositionWords.Verdict(trend),
    };

    private static Wire.PositionLine ToWire(PositionLine line)
    {
        var wire = new Wire.PositionLine
        {
            Name = line.Name,
            FindingCount = line.Findings,
            ExposureHours = line.ExposureHours,
            AircraftCount = line.Aircraft,
            TimesOthers = line.TimesOthers?.ToWire(),
            Verdict = (Wire.PositionVerdict)((int)line.Finding + 1),
        };
        if (line.PValue is { } p)
            wire.PValue = p;
        if (line.AdjustedPValue is { } adjusted)
            wire.AdjustedPValue = adjusted;
        return wire;
    }
}
