namespace FleetTrend.Trends.Positions;

/// <summary>What the comparison of a position with the others found.</summary>
public enum PositionFinding
{
    /// <summary>So few findings on so few aircraft could show no difference.</summary>
    TooFew = 0,

    /// <summary>No more often than chance allows.</summary>
    NoneShown = 1,

    /// <summary>More often than the others.</summary>
    MoreOften = 2,

    /// <summary>Less often than the others.</summary>
    LessOften = 3,
}
