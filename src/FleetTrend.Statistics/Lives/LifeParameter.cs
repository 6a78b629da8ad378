namespace FleetTrend.Statistics.Lives;

/// <summary>A fitted parameter.</summary>
/// <param name="Name">shape, scale (hours), mu or sigma (of ln hours).</param>
/// <param name="Value">Maximum-likelihood estimate.</param>
/// <param name="StandardError">From the observed information, by the delta method; 0 where the value was given, not fitted.</param>
/// <param name="Interval">Profile-likelihood interval; an end that the data do not limit is 0 or infinite.</param>
/// <param name="WaldInterval">
/// Normal interval from the standard error, on the logarithm (for mu on mu itself): the limits that most programs print. With few
/// failures <paramref name="Interval"/> holds the truth more nearly as often as stated. Source: Meeker and Escobar 1998, section 8.4.
/// </param>
public sealed record LifeParameter(string Name, double Value, double StandardError, Interval Interval, Interval WaldInterval);
