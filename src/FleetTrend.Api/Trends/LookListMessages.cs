using FleetTrend.Trends.LookLists;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>Look lists as the contract writes them.</summary>
internal static class LookListMessages
{
    public static Wire.LookList ToWire(this LookList list)
    {
        var wire = new Wire.LookList
        {
            Registration = list.Registration,
            Base = list.Base,
            TypeGroup = list.TypeGroup,
            LatestDate = list.LatestDate.ToWire(),
            LatestInspectionDate = list.LatestInspectionDate.ToWire(),
            Confidence = list.Confidence,
            Statement = LookListWords.Statement(list),
            Lines = { list.Lines.Select(ToWire) },
        };
        if (list.LatestHours is { } hours)
            wire.LatestHours = hours;
        return wire;
    }

    private static Wire.LookListLine ToWire(LookListLine line)
    {
        var wire = new Wire.LookListLine
        {
            Location = line.Location,
            Kind = line.Kind,
            LookFor = line.LookFor,
            Reasons = { line.Reasons.Select(r => (Wire.LookReason)r) },
            ReasonsText = LookListWords.Reasons(line),
            Checks = { line.Checks },
            IntervalHours = line.IntervalHours,
            LastLookDate = line.LastLookDate.ToWire(),
            PassedOverDate = line.PassedOverDate.ToWire(),
            Before = { line.Before.Select(ToWire) },
            Part = line.Part is null ? null : ToWire(line.Part),
            RecordKeys = { line.Evidence.Select(EvidenceMessages.ToWire) },
        };
        if (line.HoursSinceLook is { } hours)
            wire.HoursSinceLook = hours;
        return wire;
    }

    private static Wire.SeenBefore ToWire(SeenBefore seen)
    {
        var wire = new Wire.SeenBefore
        {
            Condition = (Wire.Condition)seen.Condition,
            FoundDate = seen.FoundDate.ToWire(),
            HoursSinceFound = seen.HoursSinceFound,
            Action = seen.Action is { } action ? (Wire.ActionKind)action : Wire.ActionKind.Unspecified,
            ActionDate = seen.ActionDate.ToWire(),
            IsOpen = seen.IsOpen,
            RecordKeys = { seen.Evidence.Select(EvidenceMessages.ToWire) },
        };
        if (seen.Millimetres is { } size)
            wire.SizeMm = size;
        return wire;
    }

    private static Wire.PartOnList ToWire(PartOnList part)
    {
        var wire = new Wire.PartOnList { SerialNumber = part.SerialNumber ?? "" };
        if (part.AgeHours is { } age)
            wire.AgeHours = age;
        if (part is { Chance: { } chance, Lower: { } lower, Upper: { } upper })
            (wire.Chance, wire.Lower, wire.Upper) = (chance, lower, upper);
        return wire;
    }
}
