using FleetTrend.Records.Sources;
using FleetTrend.Store.Codes;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Codes;

/// <summary>Codes as the contract writes them.</summary>
internal static class CodeMessages
{
    public static Wire.SourceCode ToWire(this KnownCode known)
    {
        var code = new Wire.SourceCode { Source = known.Code.Source, Code = known.Code.Code, SetTime = known.SetTime.ToWire() };
        switch (known.Meaning)
        {
            case CodeMeaning.Location location:
                code.Location = location.Path;
                break;
            case CodeMeaning.Condition condition:
                code.Condition = (Wire.Condition)condition.Value;
                break;
            case CodeMeaning.Action action:
                code.Action = (Wire.ActionKind)action.Value;
                break;
        }

        return code;
    }

    public static Wire.UnmappedCode ToWire(this UnmappedCode unmapped) => new()
    {
        Source = unmapped.Code.Source,
        Kind = (Wire.CodeKind)unmapped.Code.Kind,
        Code = unmapped.Code.Code,
        WaitingCount = unmapped.WaitingCount,
        SinceTime = unmapped.SinceTime.ToWire(),
    };
}
