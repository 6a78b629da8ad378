namespace FleetTrend.Store.Mapping;

/// <summary>Which table holds the content of a record. The numbers are stored.</summary>
internal enum RecordKind : short
{
    Airframe = 1,
    MeterReading = 2,
    MeterChange = 3,
    Installation = 4,
    Removal = 5,
    Inspection = 6,
    Finding = 7,
    Action = 8,
    Retraction = 9,
}
