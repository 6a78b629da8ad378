namespace FleetTrend.Statistics.Monitoring;

/// <summary>When a sum of counts signals; for whole numbers the two differ.</summary>
public enum CusumAlarm
{
    /// <summary>At the limit or above it (Lucas).</summary>
    AtOrAbove,

    /// <summary>Above the limit only.</summary>
    Above,
}
