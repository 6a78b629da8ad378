namespace FleetTrend.Records.Sources;

/// <summary>What a code of a source stands for. The numbers are stored.</summary>
public enum CodeKind
{
    /// <summary>A location.</summary>
    Location = 1,

    /// <summary>The condition of a finding.</summary>
    Condition = 2,

    /// <summary>The kind of an action.</summary>
    Action = 3,
}
