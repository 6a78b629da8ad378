namespace FleetTrend.Records;

/// <summary>What a record is. The numbers are stored, and are those of the contract.</summary>
public enum RecordKind : short
{
    /// <summary>An aircraft.</summary>
    Airframe = 1,

    /// <summary>A meter reading.</summary>
    MeterReading = 2,

    /// <summary>A meter change.</summary>
    MeterChange = 3,

    /// <summary>A part that went in.</summary>
    Installation = 4,

    /// <summary>A part that came out.</summary>
    Removal = 5,

    /// <summary>An inspection.</summary>
    Inspection = 6,

    /// <summary>A finding.</summary>
    Finding = 7,

    /// <summary>An action.</summary>
    Action = 8,

    /// <summary>A retraction.</summary>
    Retraction = 9,

    /// <summary>A practice change.</summary>
    PracticeChange = 10,

    /// <summary>A stock count.</summary>
    StockCount = 11,
}
