namespace FleetTrend.Trends.Quiet;

/// <summary>Whether an aircraft or a base is asked about for its few findings. The numbers are those of the contract.</summary>
public enum QuietVerdict
{
    /// <summary>Its looks are so few that it would not be asked about with no finding at all.</summary>
    TooEarly = 1,

    /// <summary>As many findings as others have, or not so few that it stands out.</summary>
    Ordinary = 2,

    /// <summary>Far fewer findings than the others would have: a question to the people there, and no accusation.</summary>
    Asked = 3,
}
