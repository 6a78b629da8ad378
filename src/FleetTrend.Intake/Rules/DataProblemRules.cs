using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of what people ask and answer about data problems and findings that are one event.</summary>
public static class DataProblemRules
{
    private const int MaxNameLength = 60;
    private const int MaxIdLength = 120;
    private const int MaxNoteLength = 2_000;

    /// <summary>Every rule that a question breaks.</summary>
    public static IReadOnlyList<Refusal> Question(Wire.ListDataChecksRequest request)
    {
        var reader = new FieldReader(default);
        reader.Filter("state", request.State);
        reader.Filter("kind", request.Kind);
        if (request.Registration.Length > 0)
            reader.Name("registration", request.Registration.ToUpperInvariant(), Patterns.Registration, Patterns.RegistrationRule);
        return reader.Refusals;
    }

    /// <summary>Every rule that a closing breaks.</summary>
    public static IReadOnlyList<Refusal> Closing(Wire.CloseDataCheckRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("closed_by", request.ClosedBy, 1, MaxNameLength);
        Why(reader, request.Note, "must say how it was settled");
        return reader.Refusals;
    }

    /// <summary>Every rule that a merge breaks.</summary>
    public static IReadOnlyList<Refusal> Merge(Wire.MergeFindingsRequest request)
    {
        var reader = new FieldReader(default);
        Finding(reader, "kept", request.Kept);
        Finding(reader, "merged", request.Merged);
        if (reader.Refusals.Count == 0 && request.Kept.Source == request.Merged.Source)
        {
            reader.At("merged").Refuse(
                "source", request.Merged.Source, Reasons.FieldNotAllowed,
                "must be another source than that of kept: within a source same_event_as of a finding says that two are one event");
        }

        Decision(reader, request.DecidedBy, request.Note);
        return reader.Refusals;
    }

    /// <summary>Every rule that taking a merge back breaks.</summary>
    public static IReadOnlyList<Refusal> Unmerge(Wire.UnmergeFindingsRequest request)
    {
        var reader = new FieldReader(default);
        Finding(reader, "merged", request.Merged);
        Decision(reader, request.DecidedBy, request.Note);
        return reader.Refusals;
    }

    private static void Finding(FieldReader reader, string field, Wire.FindingName? name)
    {
        if (name is null)
        {
            reader.Refuse(field, "", Reasons.FieldRequired, "must be a finding with source and source_record_id");
            return;
        }

        var inside = reader.At(field);
        inside.Name("source", name.Source, Patterns.Source, Patterns.SourceRule);
        inside.Line("source_record_id", name.SourceRecordId, 1, MaxIdLength);
    }

    private static void Decision(FieldReader reader, string by, string note)
    {
        reader.Line("decided_by", by, 1, MaxNameLength);
        Why(reader, note, "must say why");
    }

    private static void Why(FieldReader reader, string note, string rule)
    {
        if (reader.Note("note", note, MaxNoteLength) is null)
            reader.Refuse("note", "", Reasons.FieldRequired, rule);
    }
}
