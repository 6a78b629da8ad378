using FleetTrend.Store.Histories;
using Google.Protobuf.WellKnownTypes;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake;

/// <summary>What became of a record, as the contract says it.</summary>
internal static class Outcomes
{
    /// <summary>Of a record that was pushed.</summary>
    /// <param name="record">The record.</param>
    /// <param name="result">What the store made of it.</param>
    /// <param name="awaits">What it waits for where it is held.</param>
    public static Wire.RecordOutcome Create(Wire.Record record, SaveResult result, IReadOnlyList<Refusal>? awaits) => result switch
    {
        SaveResult.Accepted accepted => new() { Key = record.Key, State = Wire.RecordState.Accepted, AcceptTime = Time(accepted.AcceptTime) },
        SaveResult.Unchanged unchanged => new() { Key = record.Key, State = Wire.RecordState.Unchanged, AcceptTime = Time(unchanged.AcceptTime) },
        SaveResult.Held held => new()
        {
            Key = record.Key,
            State = Wire.RecordState.Held,
            HoldTime = Time(held.HoldTime),
            Awaits = awaits is null ? null : RefusalStatus.Build(awaits),
        },
        SaveResult.Conflict conflict => Refused(record, [Conflicts.Explain(conflict, record)]),
        _ => throw new ArgumentOutOfRangeException(nameof(result), result, "Not a result of saving."),
    };

    /// <summary>Of a record that was only checked.</summary>
    public static Wire.RecordOutcome Checked(Wire.Record record, SaveResult result, IReadOnlyList<Refusal>? awaits) =>
        result is SaveResult.Accepted ? new() { Key = record.Key, State = Wire.RecordState.Valid } : Create(record, result, awaits);

    /// <summary>Of a record that breaks rules.</summary>
    public static Wire.RecordOutcome Refused(Wire.Record record, IReadOnlyList<Refusal> refusals) =>
        new() { Key = record.Key, State = Wire.RecordState.Refused, Error = RefusalStatus.Build(refusals) };

    /// <summary>Absent where nothing was written yet.</summary>
    private static Timestamp? Time(DateTimeOffset time) => time == default ? null : Timestamp.FromDateTimeOffset(time);
}
