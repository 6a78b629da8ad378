namespace FleetTrend.Records.Installations;

/// <summary>Why a part came out.</summary>
public enum RemovalReason
{
    /// <summary>It was found failed; the finding tells how.</summary>
    Failed = 1,

    /// <summary>Its turn by a time limit.</summary>
    TimeLimit = 2,

    /// <summary>Renewed along with a failed sister part.</summary>
    WithSisters = 3,

    /// <summary>In the way of other work: an engine or cylinder change among them.</summary>
    Access = 4,

    /// <summary>The aircraft left the fleet.</summary>
    AircraftRetired = 5,

    /// <summary>Any other reason than failure.</summary>
    Other = 6,
}
