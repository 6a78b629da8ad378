using FleetTrend.Store.Mapping;

namespace FleetTrend.Store.Histories;

/// <summary>Decides, one record after another, what becomes of a batch; each record sees what those before it have changed.</summary>
/// <param name="references">What records may refer to.</param>
/// <param name="stored">Stored revisions of the source records in the batch; grows with what is accepted.</param>
/// <param name="acceptTime">The accept time of the batch.</param>
internal sealed class BatchDecision(
    References references,
    Dictionary<(int SourceId, string SourceRecordId), SortedDictionary<int, StoredRevision>> stored,
    DateTimeOffset acceptTime)
{
    private readonly HashSet<string> _registered = new(StringComparer.Ordinal);

    /// <summary>What is to be written, in the order sent.</summary>
    public List<AcceptedRecord> Accepted { get; } = [];

    /// <summary>Registration marks that the batch itself registers.</summary>
    public IReadOnlyCollection<string> Registered => _registered;

    public SaveResult Decide(NewRecord record)
    {
        if (references.Source(record.Key.Source) is not { } sourceId)
            return new SaveResult.Conflict(SaveConflict.SourceUnknown, record.Key.Source);

        var mentions = Mentions.Of(record.Content);
        if (!stored.TryGetValue((sourceId, record.Key.SourceRecordId), out var revisions))
            stored.Add((sourceId, record.Key.SourceRecordId), revisions = []);
        if (revisions.TryGetValue(record.Key.Revision, out var same))
        {
            return same.Kind == mentions.Kind && same.ContentHash.AsSpan().SequenceEqual(record.ContentHash)
                ? new SaveResult.Unchanged(same.AcceptTime)
                : new SaveResult.Conflict(SaveConflict.RevisionReused, $"{record.Key.Revision}");
        }

        if (FindConflict(record, mentions, revisions) is { } conflict)
            return conflict;

        revisions.Add(record.Key.Revision, new StoredRevision(mentions.Kind, record.ContentHash, acceptTime));
        Accepted.Add(new AcceptedRecord(sourceId, mentions.Kind, record));
        return new SaveResult.Accepted(acceptTime);
    }

    private SaveResult.Conflict? FindConflict(
        NewRecord record, Mentions mentions, SortedDictionary<int, StoredRevision> revisions)
    {
        if (mentions.Kind == RecordKind.Retraction)
        {
            return revisions.Count > 0 ? null
                : new SaveResult.Conflict(SaveConflict.RetractionOfUnknown, record.Key.SourceRecordId);
        }

        var other = revisions.Values.FirstOrDefault(revision => revision.Kind != RecordKind.Retraction);
        if (other is not null && other.Kind != mentions.Kind)
            return new SaveResult.Conflict(SaveConflict.KindChanged, $"{other.Kind}");
        if (mentions.TypeGroups.FirstOrDefault(name => references.TypeGroup(name) is null) is { } typeGroup)
            return new SaveResult.Conflict(SaveConflict.TypeGroupUnknown, typeGroup);
        if (mentions.Locations.FirstOrDefault(path => !references.HasLocation(path)) is { } location)
            return new SaveResult.Conflict(SaveConflict.LocationUnknown, location);
        if (references.Aircraft(mentions.Registration!) is null && !_registered.Contains(mentions.Registration!))
        {
            if (mentions.Kind != RecordKind.Airframe)
                return new SaveResult.Conflict(SaveConflict.AircraftUnknown, mentions.Registration!);
            _registered.Add(mentions.Registration!);
        }

        return null;
    }
}
