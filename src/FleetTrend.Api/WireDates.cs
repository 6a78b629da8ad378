using FleetTrend.Intake;
using Google.Protobuf.WellKnownTypes;
using Google.Type;

namespace FleetTrend.Api;

/// <summary>Days and moments as the contract writes them; null stays absent.</summary>
internal static class WireDates
{
    public static Date ToWire(this DateOnly day) => new() { Year = day.Year, Month = day.Month, Day = day.Day };

    public static Date? ToWire(this DateOnly? day) => day?.ToWire();

    public static Timestamp ToWire(this DateTimeOffset moment) => Timestamp.FromDateTimeOffset(moment);

    /// <summary>A moment that was asked for, to the microsecond; null where absent.</summary>
    /// <param name="field">The field that has it.</param>
    /// <param name="value">As sent.</param>
    /// <param name="latest">The latest that may be asked for, as a rule now.</param>
    /// <exception cref="Grpc.Core.RpcException">It is no moment, or a later one.</exception>
    public static DateTimeOffset? ReadMoment(string field, Timestamp? value, DateTimeOffset latest)
    {
        const string Rule = "must be a time from year 1 to now, such as \"2026-02-03T10:15:00Z\"";
        if (value is null)
            return null;
        if (value.Seconds is < -62135596800 or > 253402300799 || value.Nanos is < 0 or > 999_999_999)
            throw new Refusal(field, $"{value.Seconds}", Reasons.DateInvalid, Rule) { IsBare = true }.ToException();
        var moment = value.ToDateTimeOffset();
        return moment > latest ? throw new Refusal(field, $"{moment:O}", Reasons.DateOutOfRange, Rule).ToException() : moment;
    }
}
