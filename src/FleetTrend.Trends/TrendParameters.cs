namespace FleetTrend.Trends;

/// <summary>The choices behind a set of trends; stored with it, so that it can be made again.</summary>
public sealed record TrendParameters
{
    /// <summary>Confidence of every interval.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Flags are raised at q-values up to this: the expected share of false alarms among flags this strong or stronger.</summary>
    public double FalseDiscoveryRate { get; init; } = 0.05;

    /// <summary>An aircraft is flagged for drift only with at least this many events of the condition.</summary>
    public int MinimumEventsForDrift { get; init; } = 3;

    /// <summary>A location is flagged as coming back only with at least this many events at later looks than one that had been closed.</summary>
    public int RepeatsForFlag { get; init; } = 2;

    /// <summary>A life distribution is fitted with at least this many failures.</summary>
    public int MinimumFailuresForFit { get; init; } = 3;

    /// <summary>Hours ahead for which the chance of failure is given: one inspection interval.</summary>
    public double LookAheadHours { get; init; } = 100;
}
