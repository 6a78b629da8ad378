namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>refresh_requests</c>: one per accepted batch, or asked for by a person.</summary>
internal sealed class RefreshRequestRow
{
    public long Id { get; set; }

    public DateTimeOffset RequestTime { get; set; }

    /// <summary>Asked for by a person: no waiting for further records.</summary>
    public bool AtOnce { get; set; }

    /// <summary>When the latest attempt at it failed; null where none did.</summary>
    public DateTimeOffset? FailedTime { get; set; }
}
