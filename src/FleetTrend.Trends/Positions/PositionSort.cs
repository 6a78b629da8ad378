namespace FleetTrend.Trends.Positions;

/// <summary>What is compared on one engine.</summary>
public enum PositionSort
{
    /// <summary>Its cylinders.</summary>
    Cylinder = 1,

    /// <summary>Its left and right side.</summary>
    Side = 2,
}
