namespace FleetTrend.Intake.HeldRecords;

/// <summary>What becomes of a record about an aircraft that is not registered, or about a location that it does not have.</summary>
public enum MissingPlace
{
    /// <summary>It is refused.</summary>
    Refuse = 0,

    /// <summary>It is held until the aircraft is registered, and is in a type group whose layout has the location.</summary>
    Hold = 1,
}
