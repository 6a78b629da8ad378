using System.Text.Json.Serialization;

namespace FleetTrend.Trends.PartLives;

/// <summary>
/// Part life at one base against the other bases of the type group: early failures and median life, each with its test. Flag, table, text,
/// plot and contract all take what it found; none of them compares again.
/// </summary>
public sealed record BaseContrast
{
    /// <summary>Median life here over median life elsewhere, with its interval; no value where it cannot be compared.</summary>
    public required Figure MedianRatio { get; init; }

    /// <summary>Median life here, hours; null where not compared.</summary>
    public Figure? MedianHere { get; init; }

    /// <summary>Median life elsewhere, hours; null where not compared.</summary>
    public Figure? MedianElsewhere { get; init; }

    /// <summary>Age from which lives count for the medians, hours: above 0 where the medians differ no longer without early failures.</summary>
    public double MedianFromHours { get; init; }

    /// <summary>The law of the medians: <c>Weibull</c> or <c>lognormal</c>; null where stored before it was told.</summary>
    public string? Law { get; init; }

    /// <summary>The age before which a failure is early, hours; null where stored before early failures were compared.</summary>
    public double? EarlyHours { get; init; }

    /// <summary>Chance that a new part fails early here.</summary>
    public Figure? EarlyHere { get; init; }

    /// <summary>Chance that a new part fails early elsewhere.</summary>
    public Figure? EarlyElsewhere { get; init; }

    /// <summary>Early hazard here over early hazard elsewhere; null where nothing failed early.</summary>
    public Figure? EarlyRatio { get; init; }

    /// <summary>Lives elsewhere.</summary>
    public required int OtherLives { get; init; }

    /// <summary>Failures elsewhere.</summary>
    public required int OtherFailures { get; init; }

    /// <summary>Test of equal medians; null where not tested.</summary>
    public ContrastTest? MedianTest { get; init; }

    /// <summary>Test of equal early hazards; null where not tested: so few early failures can show nothing.</summary>
    public ContrastTest? EarlyTest { get; init; }

    /// <summary>What was found of the medians.</summary>
    [JsonIgnore]
    public ContrastFinding Median => MedianTest?.Finding ?? ContrastFinding.NotCompared;

    /// <summary>What was found of early failures.</summary>
    [JsonIgnore]
    public ContrastFinding Early => EarlyTest?.Finding ?? ContrastFinding.NotCompared;

    /// <summary>Whether the base is called worse in one way at least.</summary>
    [JsonIgnore]
    public bool IsWorse => Median == ContrastFinding.Worse || Early == ContrastFinding.Worse;

    /// <summary>Whether the base is called different: no figure for all bases together then describes any of them.</summary>
    [JsonIgnore]
    public bool IsDifferent => IsWorse || Median == ContrastFinding.Better || Early == ContrastFinding.Better;

    /// <summary>The test with the smaller q-value; null where there is none.</summary>
    [JsonIgnore]
    public ContrastTest? Strongest => new[] { MedianTest, EarlyTest }.OfType<ContrastTest>().MinBy(t => t.QValue);

    /// <summary>Of the tests that call it worse, the one with the smaller q-value; null where none does.</summary>
    [JsonIgnore]
    public ContrastTest? Worst =>
        new[] { MedianTest, EarlyTest }.OfType<ContrastTest>().Where(t => t.Finding == ContrastFinding.Worse).MinBy(t => t.QValue);
}
