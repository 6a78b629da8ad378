using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Records.Flags;
using FleetTrend.Store.Flags;
using FlagState = FleetTrend.Records.Flags.FlagState;

namespace FleetTrend.Api.Flags;

/// <summary>What people answer to flags, by a call or by a form: the same rules and the same refusals.</summary>
internal sealed class FlagAnswers(FlagStore flags, TimeProvider clock, ILogger<FlagAnswers> log)
{
    /// <summary>The call that a form stands for.</summary>
    public const string Acknowledging = "/fleettrend.v1.FlagService/AcknowledgeFlag";

    /// <summary>The call that a form stands for.</summary>
    public const string Closing = "/fleettrend.v1.FlagService/CloseFlag";

    /// <summary>The call that a form stands for.</summary>
    public const string ActingOn = "/fleettrend.v1.FlagService/ActOnFlag";

    /// <summary>The call that a form stands for.</summary>
    public const string Reopening = "/fleettrend.v1.FlagService/ReopenFlag";

    /// <summary>The call that a form stands for.</summary>
    public const string Assigning = "/fleettrend.v1.FlagService/AssignFlag";

    private sealed record Sent(string FlagId, string Etag, bool ValidateOnly);

    /// <summary>Says that somebody has seen a flag.</summary>
    public Task<Answer<StoredFlag>> AcknowledgeAsync(AcknowledgeFlagRequest request, Caller caller, CancellationToken ct) => TakeAsync(
        FlagAnswerRules.Acknowledgement(request),
        new FlagAnswer { State = FlagState.Acknowledged, By = request.AcknowledgedBy, Note = request.Comment },
        new Sent(request.FlagId, request.Etag, request.ValidateOnly), caller, ct);

    /// <summary>Closes a flag.</summary>
    public Task<Answer<StoredFlag>> CloseAsync(CloseFlagRequest request, Caller caller, CancellationToken ct) => TakeAsync(
        FlagAnswerRules.Closing(request), new FlagAnswer { State = FlagState.Closed, By = request.ClosedBy, Note = request.Comment },
        new Sent(request.FlagId, request.Etag, request.ValidateOnly), caller, ct);

    /// <summary>Says what was done about a flag.</summary>
    public Task<Answer<StoredFlag>> ActOnAsync(ActOnFlagRequest request, Caller caller, CancellationToken ct)
    {
        var (day, hours) = FlagAnswerRules.Action(request, DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime), out var refusals);
        var answer = new FlagAnswer
        {
            State = FlagState.ActedOn,
            By = request.ActedBy,
            Note = request.Comment,
            ActionDate = day,
            ActionTimeInService = hours,
        };
        return TakeAsync(refusals, answer, new Sent(request.FlagId, request.Etag, request.ValidateOnly), caller, ct);
    }

    /// <summary>Takes a closing back.</summary>
    public Task<Answer<StoredFlag>> ReopenAsync(ReopenFlagRequest request, Caller caller, CancellationToken ct) => TakeAsync(
        FlagAnswerRules.Reopening(request), new FlagAnswer { State = FlagState.Reopened, By = request.ReopenedBy, Note = request.Comment },
        new Sent(request.FlagId, request.Etag, request.ValidateOnly), caller, ct);

    /// <summary>Gives a flag to somebody.</summary>
    public Task<Answer<StoredFlag>> AssignAsync(AssignFlagRequest request, Caller caller, CancellationToken ct) => TakeAsync(
        FlagAnswerRules.Assignment(request), new FlagAnswer { By = request.AssignedBy, Assignee = request.Assignee },
        new Sent(request.FlagId, request.Etag, request.ValidateOnly), caller, ct);

    /// <summary>The number of a flag, or null where the text is none.</summary>
    public static long? IdOf(string flagId) =>
        long.TryParse(flagId, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : null;

    /// <summary>What an identifier is refused with that no flag has.</summary>
    public static Refusal Unknown(string flagId) => new("flag_id", flagId, Reasons.FlagNotFound, "must be the identifier of a flag");

    private async Task<Answer<StoredFlag>> TakeAsync(
        IReadOnlyList<Refusal> refusals, FlagAnswer answer, Sent sent, Caller caller, CancellationToken ct)
    {
        if (IdOf(sent.FlagId) is not { } id)
            return Answer<StoredFlag>.Refuse([.. refusals, Unknown(sent.FlagId)]);
        if (refusals.Count > 0)
            return Answer<StoredFlag>.Refuse(refusals);
        int? version = sent.Etag.Length == 0 ? null : int.Parse(sent.Etag, CultureInfo.InvariantCulture);
        var answered = await flags.AnswerAsync(id, answer with { Version = version }, !sent.ValidateOnly, ct);
        if (answered is null)
            return Unknown(sent.FlagId);
        if (Refused(answered, answer, sent) is { } refusal)
            return refusal;
        if (answered.State == AnswerState.Taken && !sent.ValidateOnly)
            ApiLog.FlagAnswered(log, answered.Flag.FlagId, caller.LogName, answer.State?.ToString() ?? "Assigned");
        return answered.Flag;
    }

    private static Refusal? Refused(AnsweredFlag answered, FlagAnswer answer, Sent sent) => answered.State switch
    {
        AnswerState.StepBetween => new Refusal(
            "etag", sent.Etag, Reasons.FlagChanged,
            $"must be that of the flag as it stands, {FlagMessages.EtagOf(answered.Flag)}: "
            + $"{answered.Flag.AnsweredBy ?? "a refresh of the trends"} took a step meanwhile, and it is {FlagMessages.StateOf(answered.Flag)} now"),
        AnswerState.NewerIsOpen => new Refusal("flag_id", sent.FlagId, Reasons.FlagRaisedAgain, "must be the newest flag about its subject"),
        AnswerState.NotFrom when answered.Flag.State == FlagState.Closed =>
            new Refusal("flag_id", sent.FlagId, Reasons.FlagIsClosed, "must be a flag that is not closed"),
        AnswerState.NotFrom => new Refusal(
            "flag_id", sent.FlagId, Reasons.FlagStepNotNow,
            answer.State == FlagState.Reopened ? $"must be a flag that is closed or helped; this one is {FlagMessages.StateOf(answered.Flag)}"
            : FlagLife.IsUnsettled(answered.Flag.State) ? $"must be a flag that nobody has acted on; this one is {FlagMessages.StateOf(answered.Flag)}"
            : "must be a flag that is not settled; this one is helped"),
        AnswerState.Taken or AnswerState.Unchanged => null,
    };
}
