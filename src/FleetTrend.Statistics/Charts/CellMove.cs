namespace FleetTrend.Statistics.Charts;

/// <summary>How a chain of cells stands for a moving average that takes any value.</summary>
public enum CellMove
{
    /// <summary>The average lies anywhere in its cell, all places alike; what it moves to is shared among the cells it covers.</summary>
    Spread,

    /// <summary>The average lies in the middle of its cell and moves to one other cell.</summary>
    Midpoint,
}
