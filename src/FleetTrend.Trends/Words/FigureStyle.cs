namespace FleetTrend.Trends.Words;

/// <summary>How the value of a figure reads.</summary>
public enum FigureStyle
{
    /// <summary>As it is, with the figure's own unit.</summary>
    AsIs = 1,

    /// <summary>A ratio: <c>3.9 times</c>.</summary>
    Times = 2,

    /// <summary>Hours: <c>1,240 h</c>.</summary>
    Hours = 3,

    /// <summary>A probability in [0, 1], shown in percent.</summary>
    Chance = 4,

    /// <summary>A count without its unit, which the sentence has: <c>0.30</c>.</summary>
    Count = 5,
}
