using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Flags;
using FlagState = FleetTrend.Store.Flags.FlagState;

namespace FleetTrend.Api.Flags;

/// <summary>What people answer to flags, by a call or by a form: the same rules and the same refusals.</summary>
internal sealed class FlagAnswers(FlagStore flags, ILogger<FlagAnswers> log)
{
    /// <summary>The call that a form stands for.</summary>
    public const string Acknowledging = "/fleettrend.v1.FlagService/AcknowledgeFlag";

    /// <summary>The call that a form stands for.</summary>
    public const string Closing = "/fleettrend.v1.FlagService/CloseFlag";

    /// <summary>Says that somebody has seen a flag.</summary>
    public async Task<Answer<StoredFlag>> AcknowledgeAsync(AcknowledgeFlagRequest request, Caller caller, CancellationToken ct)
    {
        if (FlagAnswerRules.Acknowledgement(request) is { Count: > 0 } refusals)
            return Answer<StoredFlag>.Refuse(refusals);
        var flag = IdOf(request.FlagId) is { } id
            ? await flags.AcknowledgeAsync(id, request.AcknowledgedBy, request.Comment, !request.ValidateOnly, ct)
            : null;
        return Answered(flag, request.FlagId, request.AcknowledgedBy, request.Comment, FlagState.Acknowledged, request.ValidateOnly ? null : caller);
    }

    /// <summary>Closes a flag.</summary>
    public async Task<Answer<StoredFlag>> CloseAsync(CloseFlagRequest request, Caller caller, CancellationToken ct)
    {
        if (FlagAnswerRules.Closing(request) is { Count: > 0 } refusals)
            return Answer<StoredFlag>.Refuse(refusals);
        var flag = IdOf(request.FlagId) is { } id
            ? await flags.CloseAsync(id, request.ClosedBy, request.Comment, !request.ValidateOnly, ct)
            : null;
        return Answered(flag, request.FlagId, request.ClosedBy, request.Comment, FlagState.Closed, request.ValidateOnly ? null : caller);
    }

    private static long? IdOf(string flagId) =>
        long.TryParse(flagId, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : null;

    /// <summary>The flag with the answer that was given; a closed flag keeps the one that it has.</summary>
    private Answer<StoredFlag> Answered(StoredFlag? flag, string flagId, string by, string comment, FlagState state, Caller? writer)
    {
        if (flag is null)
            return new Refusal("flag_id", flagId, Reasons.FlagNotFound, "must be the identifier of a flag");
        if (flag.State != state || flag.AnsweredBy != by || flag.Answer != comment)
            return new Refusal("flag_id", flagId, Reasons.FlagIsClosed, "must be a flag that is not closed");
        if (writer is not null)
            ApiLog.FlagAnswered(log, flag.FlagId, writer.Key.Id, state.ToString());
        return flag;
    }
}
