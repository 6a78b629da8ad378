namespace FleetTrend.Store.Requests;

/// <summary>A refresh that somebody asked for.</summary>
/// <param name="RequestTime">When it was asked for (UTC); trends as of then or later answer it.</param>
/// <param name="State">Which refresh answers it.</param>
public sealed record AskedRefresh(DateTimeOffset RequestTime, AskedRefreshState State);
