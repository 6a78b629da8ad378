namespace FleetTrend.Intake.Holding;

/// <summary>What becomes of a record about an aircraft that is not registered.</summary>
public enum UnregisteredAircraft
{
    /// <summary>It is refused.</summary>
    Refuse = 0,

    /// <summary>It is held until the aircraft is registered.</summary>
    Hold = 1,
}
