using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of what is asked about held records.</summary>
public static class HeldRecordRules
{
    /// <summary>Every rule that the question breaks.</summary>
    public static IReadOnlyList<Refusal> Check(Wire.ListHeldRecordsRequest request)
    {
        var reader = new FieldReader(default);
        if (request.Source.Length > 0)
            reader.Name("source", request.Source, Patterns.Source, Patterns.SourceRule);
        if (request.Registration.Length > 0)
            reader.Name("registration", request.Registration, Patterns.Registration, Patterns.RegistrationRule);
        return reader.Refusals;
    }
}
