using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of what is asked about stored records.</summary>
public static class RecordQuestionRules
{
    /// <summary>Every rule that the name of a record breaks.</summary>
    public static IReadOnlyList<Refusal> Check(string source, string sourceRecordId)
    {
        var reader = new FieldReader(default);
        reader.Name("source", source, Patterns.Source, Patterns.SourceRule);
        reader.Line("source_record_id", sourceRecordId, 1, RecordRules.MaxIdLength);
        return reader.Refusals;
    }

    /// <summary>Every rule that the question for a list breaks.</summary>
    public static IReadOnlyList<Refusal> Check(Wire.ListRecordsRequest request)
    {
        var reader = new FieldReader(default);
        if (request.Source.Length > 0)
            reader.Name("source", request.Source, Patterns.Source, Patterns.SourceRule);
        if (request.Registration.Length > 0)
            reader.Name("registration", request.Registration, Patterns.Registration, Patterns.RegistrationRule);
        reader.Filter("kind", request.Kind);
        return reader.Refusals;
    }
}
