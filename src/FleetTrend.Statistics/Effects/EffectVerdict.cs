namespace FleetTrend.Statistics.Effects;

/// <summary>Whether what was done helped.</summary>
public enum EffectVerdict
{
    /// <summary>What came after fits both, or nothing has come yet.</summary>
    TooEarly = 0,

    /// <summary>What came after fits a return much better than going on as before.</summary>
    Helped = 1,

    /// <summary>What came after fits going on as before much better.</summary>
    NoBetter = 2,
}
