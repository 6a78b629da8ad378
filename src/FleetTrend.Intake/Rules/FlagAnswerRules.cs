using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of what people answer to a flag.</summary>
public static class FlagAnswerRules
{
    private const int MaxNameLength = 60;
    private const int MaxCommentLength = 2_000;

    /// <summary>Every rule that an acknowledgement breaks.</summary>
    public static IReadOnlyList<Refusal> Acknowledgement(Wire.AcknowledgeFlagRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("acknowledged_by", request.AcknowledgedBy, 1, MaxNameLength);
        reader.Note("comment", request.Comment, MaxCommentLength);
        return reader.Refusals;
    }

    /// <summary>Every rule that a closing breaks.</summary>
    public static IReadOnlyList<Refusal> Closing(Wire.CloseFlagRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("closed_by", request.ClosedBy, 1, MaxNameLength);
        if (reader.Note("comment", request.Comment, MaxCommentLength) is null)
            reader.Refuse("comment", "", Reasons.FieldRequired, "must say what was done");
        return reader.Refusals;
    }
}
