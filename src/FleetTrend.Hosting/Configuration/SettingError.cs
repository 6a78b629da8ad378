namespace FleetTrend.Hosting.Configuration;

/// <summary>One setting that cannot be used.</summary>
/// <param name="Name">The setting, e.g. <c>FLEETTREND_HTTP_ADDRESS</c>.</param>
/// <param name="Value">What was given; "(hidden)" for secrets.</param>
/// <param name="Rule">What it must be.</param>
public sealed record SettingError(string Name, string Value, string Rule)
{
    /// <summary>Name, value and rule in one sentence.</summary>
    public override string ToString() => $"{Name} = '{Value}': {Rule}.";
}
