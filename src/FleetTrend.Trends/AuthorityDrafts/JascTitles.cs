namespace FleetTrend.Trends.AuthorityDrafts;

/// <summary>Titles of JASC codes at which exhaust and induction systems are reported.</summary>
/// <remarks>Source: FAA Joint Aircraft System/Component table, 27 October 2008.</remarks>
public static class JascTitles
{
    private static readonly Dictionary<string, string> ByCode = new(StringComparer.Ordinal)
    {
        ["2140"] = "Heating system",
        ["7160"] = "Engine air intake",
        ["7721"] = "CHT indicating",
        ["7722"] = "EGT/TIT indicating",
        ["7800"] = "Engine exhaust system",
        ["7810"] = "Engine collector/tailpipe/nozzle",
        ["7820"] = "Engine noise suppressor",
        ["8120"] = "Turbocharger",
        ["8530"] = "Cylinder section of a reciprocating engine",
    };

    /// <summary>The code with its title, or the code alone where its title is not known here.</summary>
    public static string Name(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return ByCode.TryGetValue(code, out var title) ? $"{code} {title}" : code;
    }
}
