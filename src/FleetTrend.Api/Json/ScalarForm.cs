namespace FleetTrend.Api.Json;

/// <summary>How a single value is written.</summary>
internal enum ScalarForm
{
    /// <summary>In JSON, without quotes.</summary>
    Bare,

    /// <summary>In JSON, in quotes.</summary>
    Quoted,

    /// <summary>In an address, which knows no quotes.</summary>
    Address,
}
