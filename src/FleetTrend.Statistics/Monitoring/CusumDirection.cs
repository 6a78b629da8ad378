namespace FleetTrend.Statistics.Monitoring;

/// <summary>What a sum of counts watches for.</summary>
public enum CusumDirection
{
    /// <summary>More events than expected: adds count less reference value.</summary>
    Upper,

    /// <summary>Fewer events than expected: adds reference value less count.</summary>
    Lower,
}
