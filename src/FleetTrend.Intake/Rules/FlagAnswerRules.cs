using System.Globalization;
using FleetTrend.Records;
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
        Etag(reader, request.Etag);
        return reader.Refusals;
    }

    /// <summary>Every rule that a closing breaks.</summary>
    public static IReadOnlyList<Refusal> Closing(Wire.CloseFlagRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("closed_by", request.ClosedBy, 1, MaxNameLength);
        Why(reader, request.Comment, "must say what was done");
        Etag(reader, request.Etag);
        return reader.Refusals;
    }

    /// <summary>What was done and when, or every rule that it breaks.</summary>
    /// <param name="request">As sent.</param>
    /// <param name="today">The day today (UTC).</param>
    /// <param name="refusals">Every broken rule; day and hours count only where this is empty.</param>
    public static (DateOnly Day, Hours? TimeInService) Action(Wire.ActOnFlagRequest request, DateOnly today, out IReadOnlyList<Refusal> refusals)
    {
        var reader = new FieldReader(today);
        refusals = reader.Refusals;
        reader.Line("acted_by", request.ActedBy, 1, MaxNameLength);
        var broken = reader.Refusals.Count;
        var day = reader.Day("action_date", request.ActionDate);
        if (reader.Refusals.Count == broken && day > today)
            reader.RefuseBare("action_date", $"{day:yyyy-MM-dd}", Reasons.DateOutOfRange, $"must be a day up to today, {today:yyyy-MM-dd}");
        Hours? hours = request.HasTimeInServiceHours ? reader.Hours("time_in_service_hours", given: true, request.TimeInServiceHours) : null;
        Why(reader, request.Comment, "must say what was done");
        Etag(reader, request.Etag);
        return (day, hours);
    }

    /// <summary>Every rule that a reopening breaks.</summary>
    public static IReadOnlyList<Refusal> Reopening(Wire.ReopenFlagRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("reopened_by", request.ReopenedBy, 1, MaxNameLength);
        Why(reader, request.Comment, "must say why");
        Etag(reader, request.Etag);
        return reader.Refusals;
    }

    /// <summary>Every rule that an assignment breaks.</summary>
    public static IReadOnlyList<Refusal> Assignment(Wire.AssignFlagRequest request)
    {
        var reader = new FieldReader(default);
        reader.Line("assignee", request.Assignee, 0, MaxNameLength);
        reader.Line("assigned_by", request.AssignedBy, 1, MaxNameLength);
        Etag(reader, request.Etag);
        return reader.Refusals;
    }

    private static void Why(FieldReader reader, string comment, string rule)
    {
        if (reader.Note("comment", comment, MaxCommentLength) is null)
            reader.Refuse("comment", "", Reasons.FieldRequired, rule);
    }

    private static void Etag(FieldReader reader, string etag)
    {
        if (etag.Length > 0 && !int.TryParse(etag, NumberStyles.None, CultureInfo.InvariantCulture, out _))
            reader.Refuse("etag", etag, Reasons.PatternMismatch, "must be the etag of the flag as it was read, or absent");
    }
}
