using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of findings.</summary>
internal static class FindingRules
{
    private const double MaxSizeMillimetres = 10_000;
    private const int MaxNoteLength = 2_000;

    public static Finding Parse(Wire.Finding finding, RecordKey key, FieldReader reader, ReferenceData known)
    {
        var registration = PlaceRules.Registration(reader, finding.Registration, known);
        var path = PlaceRules.Path(reader, finding.Location, finding.LocationCode, key, known);
        var location = PlaceRules.Location(reader, path, registration, known);
        var condition = ReadCondition(finding, key, location, reader, known);
        var colour = reader.Choice<Wire.TraceColour, TraceColour>("trace_colour", finding.TraceColour, TraceColour.Unspecified);
        if (colour != TraceColour.Unspecified && condition is not (default(Condition) or Condition.LeakTrace))
            reader.RefuseBare("trace_colour", ContractWords.Write(finding.TraceColour), Reasons.FieldNotAllowed, "must be absent where the condition is not CONDITION_LEAK_TRACE");
        return new Finding
        {
            Registration = registration,
            Location = path,
            FoundDate = reader.Day("found_date", finding.FoundDate),
            TimeInService = reader.Hours("time_in_service_hours", finding.HasTimeInServiceHours, finding.TimeInServiceHours),
            Condition = condition,
            Grade = reader.Choice<Wire.FindingGrade, FindingGrade>("grade", finding.Grade, FindingGrade.Defect),
            SizeMillimetres = reader.Size("size_mm", finding.HasSizeMm, finding.SizeMm, MaxSizeMillimetres),
            TraceColour = colour,
            Method = reader.Choice<Wire.LookMethod, LookMethod>("method", finding.Method, LookMethod.Unspecified),
            SameEventAs = ReadSameEvent(finding, key, reader),
            Note = reader.Note("note", finding.Note, MaxNoteLength),
        };
    }

    private static Condition ReadCondition(Wire.Finding finding, RecordKey key, Location? location, FieldReader reader, ReferenceData known)
    {
        var condition = finding.ConditionCode.Length > 0
            ? ReadCode(finding, key, reader, known)
            : reader.Choice<Wire.Condition, Condition>("condition", finding.Condition);
        if (condition == default || location is null)
            return condition;
        var kind = location.Kind;
        if (!kind.Conditions.Contains(condition))
        {
            reader.RefuseBare(
                "condition", Word(condition), Reasons.ConditionNotAtKind,
                $"must be a condition of a location of kind '{kind.Name}': {string.Join(", ", kind.Conditions.Select(Word))}");
        }

        return condition;
    }

    private static string Word(Condition condition) => ContractWords.Write((Wire.Condition)condition);

    private static Condition ReadCode(Wire.Finding finding, RecordKey key, FieldReader reader, ReferenceData known)
    {
        var code = new SourceCode(key.Source, CodeKind.Condition, finding.ConditionCode);
        var meaning = CodeRules.Read(reader, "condition_code", code, ("condition", finding.Condition != Wire.Condition.Unspecified), known);
        return meaning is CodeMeaning.Condition read ? read.Value : default;
    }

    private static string? ReadSameEvent(Wire.Finding finding, RecordKey key, FieldReader reader)
    {
        if (finding.SameEventAs.Length == 0)
            return null;
        reader.Line("same_event_as", finding.SameEventAs, 1, 120);
        if (finding.SameEventAs == key.SourceRecordId)
            reader.Refuse("same_event_as", finding.SameEventAs, Reasons.SelfReference, "must be another finding of the same source");
        return finding.SameEventAs;
    }
}
