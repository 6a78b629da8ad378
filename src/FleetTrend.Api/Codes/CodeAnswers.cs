using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.HeldRecords;
using FleetTrend.Intake.Rules;
using FleetTrend.Records.Sources;
using FleetTrend.Store.Codes;

namespace FleetTrend.Api.Codes;

/// <summary>Gives codes of sources their meaning, by a call or by a form: the same rules and the same refusals.</summary>
internal sealed class CodeAnswers(CodeStore codes, ReleaseSignal release, ILogger<CodeAnswers> log)
{
    /// <summary>The call that a form stands for.</summary>
    public const string Setting = "/fleettrend.v1.CodeService/SetCode";

    /// <summary>Gives a code its meaning.</summary>
    public async Task<Answer<SetCodeResponse>> SetAsync(SetCodeRequest request, Caller caller, CancellationToken ct)
    {
        if (caller.SourceFor(Setting, "code.source", request.Code?.Source ?? "") is { Refusals: { Count: > 0 } notYours })
            return Answer<SetCodeResponse>.Refuse(notYours);
        var (code, meaning) = CodeRules.Parse(request.Code, out var refusals);
        if (refusals.Count > 0)
            return Answer<SetCodeResponse>.Refuse(refusals);
        var (state, stored, replaced) = await codes.SetAsync(code, meaning, write: !request.ValidateOnly, ct);
        if (state == SetCodeState.SourceUnknown)
            return new Refusal("code.source", code.Source, Reasons.SourceNotRegistered, "must be a registered source");
        if (state == SetCodeState.LocationUnknown && meaning is CodeMeaning.Location location)
            return new Refusal("code.location", location.Path, Reasons.LocationNotInLayout, "must be a location of a layout");
        if (!request.ValidateOnly)
        {
            release.Set();
            ApiLog.CodeSet(log, code.Kind.ToString(), code.Source, caller.LogName);
        }

        return new SetCodeResponse { Code = stored!.ToWire(), Replaced = replaced?.ToWire() };
    }
}
