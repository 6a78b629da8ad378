namespace FleetTrend.Store.Forecasts;

/// <summary>What an analysis forecast for a type group when it was published.</summary>
/// <param name="TypeGroup">The type group.</param>
/// <param name="Analysis">Name of the analysis.</param>
/// <param name="AsOf">The moment that was published (UTC).</param>
/// <param name="DetailJson">The forecasts, in the form of the analysis.</param>
public sealed record KeptForecast(string TypeGroup, string Analysis, DateTimeOffset AsOf, string DetailJson);
