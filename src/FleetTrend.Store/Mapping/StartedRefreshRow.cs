namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>started_refreshes</c>.</summary>
internal sealed class StartedRefreshRow
{
    public DateTimeOffset AsOf { get; set; }

    public string TypeGroup { get; set; } = "";

    public long? SetId { get; set; }

    /// <summary>Whether somebody computes it: false between the start and the last of its jobs.</summary>
    public bool IsHandedOut { get; set; }
}
