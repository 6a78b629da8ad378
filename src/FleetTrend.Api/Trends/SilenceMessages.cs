using FleetTrend.Trends.Silence;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Silences as the contract writes them.</summary>
internal static class SilenceMessages
{
    public static Wire.Silence ToWire(this AircraftSilence silence)
    {
        var wire = new Wire.Silence
        {
            Registration = silence.Registration,
            Base = silence.Base,
            TypeGroup = silence.TypeGroup,
            HoursStillCome = silence.HoursStillCome,
            LastDate = silence.LastDate.ToWire(),
            DaysSince = silence.DaysSince,
            IsOwnGap = silence.IsOwnGap,
            RecordKeys = { silence.Evidence.Select(EvidenceMessages.ToWire) },
        };
        if (silence.LongestGapDays is { } longest)
            wire.LongestGapDays = longest;
        return wire;
    }

    public static Wire.SilentSource ToWire(this SilentSource silent) => new()
    {
        Source = silent.Source,
        LastDate = silent.Habit.LastDate.ToWire(),
        DaysSince = silent.Habit.DaysSince,
        LongestGapDays = silent.Habit.LongestGapDays,
    };
}
