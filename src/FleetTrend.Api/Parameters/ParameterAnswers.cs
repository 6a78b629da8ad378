using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Parameters;
using FleetTrend.Trends;
using ParameterRevision = FleetTrend.Store.Parameters.ParameterRevision;

namespace FleetTrend.Api.Parameters;

/// <summary>Changes the parameters of the trends, by a call or by a form: the same rules and the same refusals.</summary>
internal sealed class ParameterAnswers(ParameterStore parameters, FleetNames names, ILogger<ParameterAnswers> log)
{
    /// <summary>The call that a form stands for.</summary>
    public const string Changing = "/fleettrend.v1.ParameterService/ChangeParameters";

    /// <summary>Changes them.</summary>
    /// <returns>What is in force then.</returns>
    public async Task<Answer<ParameterRevision>> ChangeAsync(ChangeParametersRequest request, Caller caller, CancellationToken ct)
    {
        var refusals = ParameterRules.Check(
            request, await names.ReadAsync(NameKind.TypeGroup, ct), await names.ReadAsync(NameKind.LocationKind, ct));
        if (refusals.Count > 0)
            return Answer<ParameterRevision>.Refuse(refusals);
        var values = request.Parameters.ToTrends().ToJson();
        var change = await parameters.ChangeAsync(
            request.Revision, values, now => TrendParameters.Read(now.ValuesJson, now.Revision).ToJson() == values,
            caller.Name, request.Note, !request.ValidateOnly, ct);
        if (change.State == ParameterChangeState.ChangedMeanwhile)
        {
            return new Refusal(
                "revision", request.Revision.ToString(CultureInfo.InvariantCulture), Reasons.ParametersChanged,
                $"must be the revision that is in force, {change.InForce.Revision}")
            { IsBare = true };
        }

        if (change.State == ParameterChangeState.Stored && !request.ValidateOnly)
            ApiLog.ParametersChanged(log, change.InForce.Revision, caller.LogName);
        return change.State == ParameterChangeState.Stored && request.ValidateOnly ? change.InForce with { ChangeTime = null } : change.InForce;
    }
}
