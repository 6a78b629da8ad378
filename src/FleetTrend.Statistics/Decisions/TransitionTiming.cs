namespace FleetTrend.Statistics.Decisions;

/// <summary>What is assumed of the age of a transition that looks place only between two ages.</summary>
public enum TransitionTiming
{
    /// <summary>Just after the last look that found the earlier state: the most pessimistic on how early it happens.</summary>
    JustAfterLastLook,

    /// <summary>Halfway between the two looks.</summary>
    Midpoint,

    /// <summary>At the look that found it: the most optimistic, and late by half an interval on average.</summary>
    AsFound,
}
