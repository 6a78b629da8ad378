using System.Text.Json.Serialization;

namespace FleetTrend.Trends.FailureChances;

/// <summary>Looks at parts with chances of about one size.</summary>
/// <param name="From">The least of the chances.</param>
/// <param name="To">The greatest of them.</param>
/// <param name="Looks">How many looks.</param>
/// <param name="Expected">Failures foreseen.</param>
/// <param name="Found">Failures found.</param>
/// <param name="Lower">Fewest that the chances leave open.</param>
/// <param name="Upper">Most that the chances leave open.</param>
public sealed record ChanceGroup(double From, double To, int Looks, double Expected, int Found, int Lower, int Upper)
{
    /// <summary>Whether what was found lies outside of what the chances leave open.</summary>
    [JsonIgnore]
    public bool IsOff => Found < Lower || Found > Upper;
}
