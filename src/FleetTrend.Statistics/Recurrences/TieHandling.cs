namespace FleetTrend.Statistics.Recurrences;

/// <summary>How events at one age enter a partial likelihood.</summary>
public enum TieHandling
{
    /// <summary>Each against all at risk just before the age. Source: Breslow 1974.</summary>
    Breslow,

    /// <summary>One after another, each against what is left on average: nearer to the exact likelihood. Source: Efron 1977.</summary>
    Efron,
}
