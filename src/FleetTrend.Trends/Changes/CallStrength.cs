namespace FleetTrend.Trends.Changes;

/// <summary>How strong a call is.</summary>
public enum CallStrength
{
    /// <summary>No call.</summary>
    None = 0,

    /// <summary>Worth watching: of an ordinary fleet some 5 come per 50 aircraft-years.</summary>
    Watch = 1,

    /// <summary>Worth a look at the aircraft: of an ordinary fleet some 1 comes per 50 aircraft-years.</summary>
    Flag = 2,
}
