using FleetTrend.Contracts.V1;
using FleetTrend.Store.Histories;
using Google.Protobuf.Reflection;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Trends;

/// <summary>What a table of rows is asked for, named as in ListEvidence, and what answers it.</summary>
internal sealed record TraceQuery
{
    [FromQuery(Name = "typeGroup")]
    public string? TypeGroup { get; init; }

    [FromQuery(Name = "location")]
    public string? Location { get; init; }

    [FromQuery(Name = "kind")]
    public string? Kind { get; init; }

    [FromQuery(Name = "base")]
    public string? Base { get; init; }

    [FromQuery(Name = "condition")]
    public string? Condition { get; init; }

    [FromQuery(Name = "clock")]
    public string? Clock { get; init; }

    [FromQuery(Name = "asOfTime")]
    public DateTimeOffset? AsOfTime { get; init; }

    [FromServices]
    public required EvidenceReader Evidence { get; init; }

    [FromServices]
    public required TrendReader Trends { get; init; }

    [FromServices]
    public required NameFilters Filters { get; init; }

    [FromServices]
    public required Knowledge Knowledge { get; init; }

    /// <summary>What was given under a name.</summary>
    public string? ValueOf(string name) => name switch
    {
        "typeGroup" => TypeGroup,
        "location" => Location,
        "kind" => Kind,
        "condition" => Condition,
        "clock" => Clock,
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such field."),
    };

    /// <summary>The condition by its name in the contract.</summary>
    public bool TryCondition(out Condition condition)
    {
        var value = FindingReflection.Descriptor.FindTypeByName<EnumDescriptor>("Condition").FindValueByName(Condition ?? "");
        condition = value is null ? default : (Condition)value.Number;
        return value is not null;
    }

    /// <summary>A condition as a query names it.</summary>
    public static string NameOf(FleetTrend.Records.Findings.Condition condition) =>
        FindingReflection.Descriptor.FindTypeByName<EnumDescriptor>("Condition").FindValueByNumber((int)condition).Name;
}
