using FleetTrend.Intake.Rules;
using Google.Rpc;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>What a refusal must say: the field, its value, the rule, a reason and a code.</summary>
internal static class RefusalAssert
{
    /// <summary>The record breaks that rule and no other.</summary>
    public static void Refused(Record record, Reason reason, string field, string value, string ruleHas = "")
    {
        var parsed = RecordRules.Parse(record, Valid.Known());

        Assert.Null(parsed.Content);
        var refusal = Assert.Single(parsed.Refusals);
        Assert.Equal((reason.Name, field, value), (refusal.Reason.Name, refusal.Field, refusal.Value));
        Assert.Contains(ruleHas, refusal.Rule);
        AssertStatus(RefusalStatus.Build(parsed.Refusals), refusal);
    }

    public static T Accepted<T>(Record record)
    {
        var parsed = RecordRules.Parse(record, Valid.Known());
        Assert.Empty(parsed.Refusals);
        return Assert.IsType<T>(parsed.Content);
    }

    private static void AssertStatus(Google.Rpc.Status status, Refusal refusal)
    {
        Assert.Equal((int)refusal.Reason.Code, status.Code);
        var info = status.GetDetail<ErrorInfo>();
        Assert.Equal("fleettrend", info.Domain);
        Assert.Equal(refusal.Reason.Name, info.Reason);
        Assert.Equal(
            (refusal.Field, refusal.Value, refusal.Rule), (info.Metadata["field"], info.Metadata["value"], info.Metadata["rule"]));
        var violation = Assert.Single(status.GetDetail<BadRequest>().FieldViolations);
        Assert.Equal(refusal.Field, violation.Field);
        Assert.Contains(refusal.Rule, violation.Description);
    }
}
