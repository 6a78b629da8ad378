using FleetTrend.Trends.LeakErosions;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>How soon leaks erode their port faces, as the contract writes it.</summary>
internal static class LeakErosionMessages
{
    public static Wire.LeakErosion ToWire(this LeakErosion erosion) => new()
    {
        TypeGroup = erosion.TypeGroup,
        LeakCount = erosion.Leaks,
        AircraftCount = erosion.Aircraft,
        ErodedAtFirstCount = erosion.ErodedAtFirst,
        ErodedCount = erosion.Eroded,
        NotLookedAtCount = erosion.NotLookedAt,
        Shares =
        {
            erosion.Shares.Select(s => new Wire.ShareEroded { Hours = s.Hours, KnownCount = s.Known, GoodCount = s.Good, Share = s.Share.ToWire() }),
        },
        OpenLeaks = { erosion.Open.Select(ToWire) },
        Statement = LeakErosionWords.Statement(erosion),
    };

    private static Wire.OpenLeak ToWire(OpenLeak leak) => new()
    {
        Registration = leak.Registration,
        Base = leak.Base,
        Location = leak.Location,
        FaceLocation = leak.Face,
        FoundDate = leak.FoundDate.ToWire(),
        HoursLeft = leak.HoursLeft,
        GoodHours = leak.GoodHours,
        NextLookHours = leak.NextLookHours,
        IsEroded = leak.IsEroded,
        Chance = leak.Chance?.ToWire(),
        RecordKeys = { leak.Evidence.Select(EvidenceMessages.ToWire) },
    };
}
