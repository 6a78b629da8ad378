using FleetTrend.Trends.Shrouds;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Stop-drilled shrouds and clamp bolts, as the contract writes them.</summary>
internal static class ShroudMessages
{
    public static Wire.ShroudTrend ToWire(this ShroudTrend trend)
    {
        var wire = new Wire.ShroudTrend
        {
            TypeGroup = trend.TypeGroup,
            ShroudCount = trend.Shrouds,
            RenewedCount = trend.Renewed,
            Shares =
            {
                trend.Shares.Select(s => new Wire.ShareRenewed
                {
                    Hours = s.Hours, RenewedCount = s.Renewed, InServiceCount = s.InService, Share = s.Share.ToWire(),
                }),
            },
            StopDrilledShrouds = { trend.StopDrilled.Select(ToWire) },
            BoltCounts = { trend.Bolts.Select(ToWire) },
            BadBolts = { trend.BadBolts.Select(ToWire) },
            Statement = $"{ShroudWords.Shrouds(trend)}{(trend.Bolts.Count > 0 ? $" {ShroudWords.Bolts(trend)}." : "")}",
        };
        if (trend.StopDrillsAtRenewal is { } drills)
            wire.StopDrillsAtRenewal = drills;
        if (trend is { FewestHours: { } fewest, MostHours: { } most })
            (wire.FewestHoursToRenewal, wire.MostHoursToRenewal) = (fewest, most);
        return wire;
    }

    private static Wire.StopDrilledShroud ToWire(StopDrilledShroud shroud) => new()
    {
        Registration = shroud.Registration,
        Base = shroud.Base,
        Shroud = shroud.Shroud,
        StopDrillCount = shroud.StopDrills,
        OpenCrackCount = shroud.OpenCracks,
        FirstDate = shroud.FirstDate.ToWire(),
        HoursSinceFirst = shroud.Hours,
        RecordKeys = { shroud.Evidence.Select(EvidenceMessages.ToWire) },
    };

    private static Wire.HexCount ToWire(HexCount count)
    {
        var wire = new Wire.HexCount { State = (Wire.HexState)count.State, BoltCount = count.Bolts, AircraftCount = count.Aircraft };
        if (count.MeanAgeHours is { } age)
            wire.MeanAgeHours = age;
        return wire;
    }

    private static Wire.BadBolt ToWire(BadBolt bolt)
    {
        var wire = new Wire.BadBolt
        {
            Registration = bolt.Registration,
            Base = bolt.Base,
            Location = bolt.Location,
            State = (Wire.HexState)bolt.State,
            FoundDate = bolt.FoundDate.ToWire(),
            HoursSince = bolt.HoursSince,
            RecordKeys = { bolt.Evidence.Select(EvidenceMessages.ToWire) },
        };
        if (bolt.AgeHours is { } age)
            wire.AgeHours = age;
        return wire;
    }
}
