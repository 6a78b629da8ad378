namespace FleetTrend.Trends.Scores;

/// <summary>
/// How often a method that is right may be called off: of 20 operators at most one within three years, whichever of its forecasts it is and however many
/// type groups and quarters are looked at (Bonferroni).
/// </summary>
internal static class FalseVerdicts
{
    /// <summary>Quarters of three years, each of which ends two that are judged together.</summary>
    public const int Quarters = 12;

    private const double OfChances = 0.025;
    private const double OfSpares = 0.025;

    /// <summary>Of the chances of one type group at the end of one quarter.</summary>
    public static double ChancesAtOnce(TypeGroupInputs inputs) => OfChances / (Quarters * inputs.TypeGroupCount);

    /// <summary>Of the spares of one type group at the end of one quarter.</summary>
    public static double SparesAtOnce(TypeGroupInputs inputs) => OfSpares / (Quarters * inputs.TypeGroupCount);
}
