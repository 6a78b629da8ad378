namespace FleetTrend.Trends;

/// <summary>What the maker or a regulation allows at most for parts of some kind on some type group; a limit that is null has not been told.</summary>
/// <param name="TypeGroup">The type group; null for all.</param>
/// <param name="Kind">Name of the kind of location; null for all.</param>
/// <param name="RenewalHours">Greatest age at which a part is renewed, flight hours.</param>
/// <param name="LookHours">Greatest interval between looks, flight hours.</param>
public sealed record MakerLimit(string? TypeGroup, string? Kind, double? RenewalHours, double? LookHours);
