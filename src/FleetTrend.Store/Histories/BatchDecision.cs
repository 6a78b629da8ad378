using FleetTrend.Store.Mapping;

namespace FleetTrend.Store.Histories;

/// <summary>Decides, one record after another, what becomes of a batch; each record sees what those before it have changed.
/// Other revisions of a record do not matter, whatever they say: revisions may come in any order.</summary>
/// <param name="references">What records may refer to.</param>
/// <param name="stored">Those revisions of the batch that are stored; grows with what is accepted.</param>
/// <param name="acceptTime">The accept time of the batch.</param>
/// <param name="registered">Registration marks that count as registered beside those that are; grows with the aircraft accepted.</param>
internal sealed class BatchDecision(
    References references,
    Dictionary<(int SourceId, string SourceRecordId, int Revision), StoredRevision> stored,
    DateTimeOffset acceptTime,
    HashSet<string> registered)
{
    /// <summary>What is to be written, in the order sent.</summary>
    public List<AcceptedRecord> Accepted { get; } = [];

    /// <summary>Registration marks that the batch itself registers.</summary>
    public IReadOnlyCollection<string> Registered => registered;

    public SaveResult Decide(NewRecord record)
    {
        if (references.Source(record.Key.Source) is not { } sourceId)
            return new SaveResult.Conflict(SaveConflict.SourceUnknown, record.Key.Source);

        var mentions = Mentions.Of(record.Content);
        var key = (sourceId, record.Key.SourceRecordId, record.Key.Revision);
        if (stored.TryGetValue(key, out var same))
        {
            return same.Kind == mentions.Kind && same.ContentHash.AsSpan().SequenceEqual(record.ContentHash)
                ? new SaveResult.Unchanged(same.AcceptTime)
                : new SaveResult.Conflict(SaveConflict.RevisionReused, $"{record.Key.Revision}");
        }

        if (mentions.Kind != RecordKind.Retraction && FindMissing(mentions) is { } conflict)
            return conflict;

        stored.Add(key, new StoredRevision(mentions.Kind, record.ContentHash, acceptTime));
        Accepted.Add(new AcceptedRecord(sourceId, mentions.Kind, record));
        return new SaveResult.Accepted(acceptTime);
    }

    private SaveResult.Conflict? FindMissing(Mentions mentions)
    {
        if (mentions.TypeGroups.FirstOrDefault(name => references.TypeGroup(name) is null) is { } typeGroup)
            return new SaveResult.Conflict(SaveConflict.TypeGroupUnknown, typeGroup);
        if (mentions.Locations.FirstOrDefault(path => !references.HasLocation(path)) is { } location)
            return new SaveResult.Conflict(SaveConflict.LocationUnknown, location);
        if (references.Aircraft(mentions.Registration!) is null && !registered.Contains(mentions.Registration!))
        {
            if (mentions.Kind != RecordKind.Airframe)
                return new SaveResult.Conflict(SaveConflict.AircraftUnknown, mentions.Registration!);
            registered.Add(mentions.Registration!);
        }

        return null;
    }
}
