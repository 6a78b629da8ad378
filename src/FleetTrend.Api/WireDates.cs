using Google.Protobuf.WellKnownTypes;
using Google.Type;

namespace FleetTrend.Api;

/// <summary>Days and moments as the contract writes them; null stays absent.</summary>
internal static class WireDates
{
    public static Date ToWire(this DateOnly day) => new() { Year = day.Year, Month = day.Month, Day = day.Day };

    public static Date? ToWire(this DateOnly? day) => day?.ToWire();

    public static Timestamp ToWire(this DateTimeOffset moment) => Timestamp.FromDateTimeOffset(moment);
}
