using FleetTrend.Records.Sources;

namespace FleetTrend.Store.Histories;

/// <summary>A record that is to be stored.</summary>
/// <param name="Key">Its identity.</param>
/// <param name="Content">
/// An <c>Airframe</c>, <c>MeterReading</c>, <c>MeterChange</c>, <c>Installation</c>, <c>Removal</c>, <c>Inspection</c>,
/// <c>Finding</c>, <c>CorrectiveAction</c> or <c>Retraction</c> that has passed the rules of intake; or a <c>HeldContent</c>, which waits.
/// </param>
/// <param name="ContentHash">SHA-256 of the content, 32 bytes: equal hashes under one key are the same record.</param>
public sealed record NewRecord(RecordKey Key, object Content, byte[] ContentHash);
