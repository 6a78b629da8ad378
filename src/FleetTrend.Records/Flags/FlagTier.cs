namespace FleetTrend.Records.Flags;

/// <summary>How strong a statement is. The numbers are stored, and are those of the contract.</summary>
public enum FlagTier
{
    /// <summary>Worth a look on the occasion.</summary>
    Watch = 1,

    /// <summary>Worth a look now.</summary>
    Flag = 2,
}
