namespace FleetTrend.Store.Requests;

/// <summary>A refresh that somebody asked for.</summary>
/// <param name="RequestTime">When it was asked for (UTC); a snapshot as of then or later answers it.</param>
/// <param name="State">Which refresh answers it.</param>
public sealed record AskedRefresh(DateTimeOffset RequestTime, AskedRefreshState State);
