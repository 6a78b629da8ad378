using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Sources;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of corrective actions.</summary>
internal static class ActionRules
{
    private const int MaxNoteLength = 2_000;

    public static CorrectiveAction Parse(Wire.Action action, RecordKey key, FieldReader reader, ReferenceData known)
    {
        var registration = PlaceRules.Registration(reader, action.Registration, known);
        var location = PlaceRules.Path(reader, action.Location, action.LocationCode, key, known);
        PlaceRules.Location(reader, location, registration, known);
        var kind = ReadKind(action, key, reader, known);
        if (action.HasPartHours && kind is not (default(ActionKind) or ActionKind.Replaced))
            reader.RefuseBare("part_hours", FieldReader.Number(action.PartHours), Reasons.FieldNotAllowed, "must be absent where the kind is not ACTION_KIND_REPLACED");
        return new CorrectiveAction
        {
            Registration = registration,
            Location = location,
            ActionDate = reader.Day("action_date", action.ActionDate),
            TimeInService = reader.Hours("time_in_service_hours", action.HasTimeInServiceHours, action.TimeInServiceHours),
            Kind = kind,
            PartHours = PartHours(action, kind, reader),
            Note = reader.Note("note", action.Note, MaxNoteLength),
        };
    }

    private static ActionKind ReadKind(Wire.Action action, RecordKey key, FieldReader reader, ReferenceData known)
    {
        if (action.KindCode.Length == 0)
            return reader.Choice<Wire.ActionKind, ActionKind>("kind", action.Kind);
        var code = new SourceCode(key.Source, CodeKind.Action, action.KindCode);
        var meaning = CodeRules.Read(reader, "kind_code", code, ("kind", action.Kind != Wire.ActionKind.Unspecified), known);
        return meaning is CodeMeaning.Action read ? read.Value : default;
    }

    /// <summary>For a replacement, absent means new.</summary>
    private static Hours? PartHours(Wire.Action action, ActionKind kind, FieldReader reader)
    {
        if (kind != ActionKind.Replaced)
            return null;
        return action.HasPartHours ? reader.Hours("part_hours", given: true, action.PartHours) : Hours.Zero;
    }
}
