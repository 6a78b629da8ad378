using FleetTrend.Trends.DueLooks;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Looks that are due as the contract writes them.</summary>
internal static class DueLookMessages
{
    public static Wire.DueLook ToWire(this DueLook due)
    {
        var wire = new Wire.DueLook
        {
            Registration = due.Registration,
            Base = due.Base,
            TypeGroup = due.TypeGroup,
            LatestDate = due.LatestDate.ToWire(),
            DueDate = due.DueDate.ToWire(),
            LocationCount = due.LocationCount,
            OverdueCount = due.OverdueCount,
            Groups = { due.Groups.Select(ToWire) },
            RecordKeys = { due.Evidence.Select(EvidenceMessages.ToWire) },
        };
        if (due.LatestHours is { } latest)
            wire.LatestHours = latest;
        if (due.HoursPerWeek is { } perWeek)
            wire.HoursPerWeek = perWeek;
        if (due.Season is { } season)
            wire.SeasonFactor = season;
        if (due.HoursToNext is { } hours)
            wire.HoursToNext = hours;
        return wire;
    }

    private static Wire.DueGroup ToWire(DueGroup group)
    {
        var wire = new Wire.DueGroup
        {
            IntervalHours = group.IntervalHours,
            LastLookDate = group.LastLookDate.ToWire(),
            Reason = (Wire.DueReason)group.Reason,
            PassedOverDate = group.PassedOverDate.ToWire(),
            PassedOverCount = group.PassedOverCount,
            LocationCount = group.Count,
            Locations = { group.Locations },
        };
        if (group.HoursSince is { } since)
            wire.HoursSince = since;
        if (group.HoursToNext is { } hours)
            wire.HoursToNext = hours;
        return wire;
    }
}
