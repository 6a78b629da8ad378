using FleetTrend.Trends.Growth;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Which way kinds of place go, as the contract writes it.</summary>
internal static class GrowthMessages
{
    public static Wire.Growth ToWire(this GrowthTrend trend) => new()
    {
        TypeGroup = trend.TypeGroup,
        Kind = trend.Kind,
        Title = trend.Title,
        Condition = (Wire.Condition)trend.Condition,
        Calendar = ToWire(trend.Calendar),
        Hours = trend.Hours is { } hours ? ToWire(hours) : null,
        Statement = GrowthWords.Statement(trend),
    };

    private static Wire.GrowthClock ToWire(GrowthClock clock)
    {
        var message = new Wire.GrowthClock
        {
            Finding = clock.Finding switch
            {
                GrowthFinding.NoneShown => Wire.GrowthClock.Types.Finding.NoneShown,
                GrowthFinding.Worse => Wire.GrowthClock.Types.Finding.Worse,
                GrowthFinding.Better => Wire.GrowthClock.Types.Finding.Better,
                _ => Wire.GrowthClock.Types.Finding.NotTold,
            },
            EventCount = clock.Events,
            AircraftCount = clock.Aircraft,
            Growth = clock.Growth.ToWire(),
        };
        if (clock.AdjustedPValue is { } p)
            message.AdjustedPValue = p;
        return message;
    }
}
