namespace FleetTrend.Statistics.Lives;

/// <summary>What weight the difference between groups has at an age.</summary>
public enum ComparisonWeight
{
    /// <summary>Equal weights: best when hazards are proportional.</summary>
    LogRank,

    /// <summary>Weight of survival just before the age: more for early differences, steady under different censoring.</summary>
    PetoPeto,

    /// <summary>Weight of lives at risk.</summary>
    Gehan,

    /// <summary>Weight of the square root of lives at risk.</summary>
    TaroneWare,
}
