using FleetTrend.Records.Aircraft;

namespace FleetTrend.Store.Histories;

/// <summary>Decides, one record after another, what becomes of a batch; each record sees what those before it have changed.
/// Other revisions of a record do not matter, whatever they say: revisions may come in any order.</summary>
/// <param name="references">What records may refer to.</param>
/// <param name="stored">Those revisions of the batch that are stored; grows with what is accepted.</param>
/// <param name="waiting">Those revisions of the batch that wait; grows with what is held.</param>
/// <param name="acceptTime">The accept time of the batch.</param>
/// <param name="registered">Registration marks that count as registered beside those that are; grows with the aircraft accepted.</param>
internal sealed class BatchDecision(
    References references,
    Dictionary<(int SourceId, string SourceRecordId, int Revision), StoredRevision> stored,
    Dictionary<(int SourceId, string SourceRecordId, int Revision), HeldRevision> waiting,
    DateTimeOffset acceptTime,
    HashSet<string> registered)
{
    /// <summary>What is to be written, in the order sent.</summary>
    public List<AcceptedRecord> Accepted { get; } = [];

    /// <summary>What is to wait, in the order sent.</summary>
    public List<(int SourceId, NewRecord.ToHold Record)> Held { get; } = [];

    /// <summary>Identifiers of waiting records that are accepted now.</summary>
    public HashSet<long> Released { get; } = [];

    /// <summary>True where there is something to write.</summary>
    public bool Changes => Accepted.Count + Held.Count + Released.Count > 0;

    /// <summary>Registration marks that the batch itself registers.</summary>
    public IReadOnlyCollection<string> Registered => registered;

    public SaveResult Decide(NewRecord record)
    {
        if (references.Source(record.Key.Source) is not { } sourceId)
            return new SaveResult.Conflict(SaveConflict.SourceUnknown, record.Key.Source);

        var key = (sourceId, record.Key.SourceRecordId, record.Key.Revision);
        var inUse = stored.GetValueOrDefault(key)?.ContentHash ?? waiting.GetValueOrDefault(key)?.ContentHash;
        if (inUse is not null && !inUse.AsSpan().SequenceEqual(record.ContentHash))
            return new SaveResult.Conflict(SaveConflict.RevisionReused, $"{record.Key.Revision}");
        if (stored.TryGetValue(key, out var same))
        {
            Release(key, record);
            return new SaveResult.Unchanged(same.AcceptTime);
        }

        return record switch
        {
            NewRecord.ToStore complete => Accept(key, complete),
            NewRecord.ToHold incomplete => Hold(key, incomplete),
            _ => throw new ArgumentOutOfRangeException(nameof(record), record, "Neither to store nor to hold."),
        };
    }

    private SaveResult Accept((int SourceId, string SourceRecordId, int Revision) key, NewRecord.ToStore record)
    {
        if (FindMissing(record) is { } conflict)
            return conflict;
        stored.Add(key, new StoredRevision(record.ContentHash, acceptTime));
        Accepted.Add(new AcceptedRecord(key.SourceId, record));
        Release(key, record);
        return new SaveResult.Accepted(acceptTime);
    }

    private SaveResult.Held Hold((int SourceId, string SourceRecordId, int Revision) key, NewRecord.ToHold record)
    {
        if (waiting.TryGetValue(key, out var first))
            return new SaveResult.Held(first.HoldTime, IsNew: false);
        waiting.Add(key, new HeldRevision(null, record.ContentHash, acceptTime));
        Held.Add((key.SourceId, record));
        return new SaveResult.Held(acceptTime, IsNew: true);
    }

    /// <summary>A record that waited and can be stored now waits no longer.</summary>
    private void Release((int SourceId, string SourceRecordId, int Revision) key, NewRecord record)
    {
        if (!waiting.Remove(key, out var held))
            return;
        if (held.Id is { } id)
            Released.Add(id);
        else
            Held.RemoveAll(item => item.SourceId == key.SourceId && item.Record.Key == record.Key);
    }

    private SaveResult.Conflict? FindMissing(NewRecord.ToStore record)
    {
        var names = record.Names;
        if (names.TypeGroups.FirstOrDefault(name => references.TypeGroup(name) is null) is { } typeGroup)
            return new SaveResult.Conflict(SaveConflict.TypeGroupUnknown, typeGroup);
        if (names.Locations.FirstOrDefault(path => !references.HasLocation(path)) is { } location)
            return new SaveResult.Conflict(SaveConflict.LocationUnknown, location);
        if (names.Registration is { } registration && references.Aircraft(registration) is null && !registered.Contains(registration))
        {
            if (record.Content is not Airframe)
                return new SaveResult.Conflict(SaveConflict.AircraftUnknown, registration);
            registered.Add(registration);
        }

        return null;
    }
}
