using FleetTrend.Records;
using FleetTrend.Records.Actions;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of corrective actions.</summary>
internal static class ActionRules
{
    private const int MaxNoteLength = 2_000;

    public static CorrectiveAction Parse(Wire.Action action, FieldReader reader, KnownFleet known)
    {
        var registration = PlaceRules.Registration(reader, action.Registration, known);
        PlaceRules.Location(reader, action.Location, registration, known);
        var kind = reader.Choice<Wire.ActionKind, ActionKind>("kind", action.Kind);
        if (action.HasPartHours && kind != ActionKind.Replaced)
            reader.Refuse("part_hours", FieldReader.Number(action.PartHours), Reasons.FieldNotAllowed, "only with ACTION_KIND_REPLACED.");
        return new CorrectiveAction
        {
            Registration = registration,
            Location = action.Location,
            ActionDate = reader.Day("action_date", action.ActionDate),
            TimeInService = reader.Hours("time_in_service_hours", action.TimeInServiceHours),
            Kind = kind,
            PartHours = PartHours(action, kind, reader),
            Note = reader.Note("note", action.Note, MaxNoteLength),
        };
    }

    /// <summary>For a replacement, absent means new.</summary>
    private static Hours? PartHours(Wire.Action action, ActionKind kind, FieldReader reader)
    {
        if (kind != ActionKind.Replaced)
            return null;
        return action.HasPartHours ? reader.Hours("part_hours", action.PartHours) : Hours.Zero;
    }
}
