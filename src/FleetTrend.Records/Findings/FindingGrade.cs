namespace FleetTrend.Records.Findings;

/// <summary>What the person who looked made of what was seen.</summary>
public enum FindingGrade
{
    /// <summary>A defect.</summary>
    Defect = 1,

    /// <summary>Seen, judged, and accepted as it is: a light deposit at a joint, for instance. The look counts as good.</summary>
    Accepted = 2,
}
