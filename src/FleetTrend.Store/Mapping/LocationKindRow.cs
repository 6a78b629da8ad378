using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>location_kinds</c>.</summary>
internal sealed class LocationKindRow
{
    public string Name { get; set; } = "";

    public string Title { get; set; } = "";

    public string LookFor { get; set; } = "";

    public string? JascCode { get; set; }

    public List<Condition> Conditions { get; set; } = [];

    public List<Condition> Failures { get; set; } = [];

    public List<Condition> Watched { get; set; } = [];

    /// <summary>As JSON: conditions by name with their lines.</summary>
    public List<ConditionChecks> Checks { get; set; } = [];

    public List<string> BaseChecks { get; set; } = [];

    /// <summary>Shipped with the product, so that a newer version may say it better; false for an operator's own.</summary>
    public bool IsShipped { get; set; }
}
