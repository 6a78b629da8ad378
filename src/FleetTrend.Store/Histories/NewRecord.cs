using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Store.Histories;

/// <summary>A record for the store: <see cref="ToStore"/> or <see cref="ToHold"/>.</summary>
/// <param name="Key">Its identity.</param>
/// <param name="ContentHash">SHA-256 of the content, 32 bytes: equal hashes under one key are the same record.</param>
public abstract record NewRecord(RecordKey Key, byte[] ContentHash)
{
    /// <summary>What the record refers to in the database.</summary>
    internal abstract ReferencedNames Names { get; }

    /// <summary>A record that has passed the rules of intake.</summary>
    /// <param name="Key">Its identity.</param>
    /// <param name="Content">What it says.</param>
    /// <param name="ContentHash">SHA-256 of the content.</param>
    public sealed record ToStore(RecordKey Key, RecordContent Content, byte[] ContentHash) : NewRecord(Key, ContentHash)
    {
        internal override ReferencedNames Names { get; } = ReferencedNames.Read(Content);
    }

    /// <summary>A record that cannot be read in full yet.</summary>
    /// <param name="Key">Its identity.</param>
    /// <param name="Content">The record as it was sent, and what it waits for.</param>
    /// <param name="ContentHash">SHA-256 of the content.</param>
    public sealed record ToHold(RecordKey Key, HeldContent Content, byte[] ContentHash) : NewRecord(Key, ContentHash)
    {
        internal override ReferencedNames Names => ReferencedNames.None;
    }
}
