using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Serialization;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.DataProblems;

/// <summary>Something in the records of an aircraft that does not add up.</summary>
/// <param name="Kind">What kind of problem.</param>
/// <param name="Registration">The aircraft; empty where no aircraft is known.</param>
/// <param name="Date">The day it concerns.</param>
/// <param name="Description">One sentence with the values, for people.</param>
/// <param name="Evidence">The records it concerns.</param>
public sealed record DataProblem(
    DataProblemKind Kind,
    string Registration,
    DateOnly Date,
    string Description,
    IReadOnlyList<RecordKey> Evidence)
{
    /// <summary>The other aircraft where two are concerned; null otherwise.</summary>
    public string? OtherRegistration { get; init; }

    /// <summary>Which of several problems of one kind in the same records; null where the records tell them apart.</summary>
    public string? Aspect { get; init; }

    /// <summary>Those records of the evidence that make it this problem and no other; null for all of the evidence.</summary>
    public IReadOnlyList<RecordKey>? Subject { get; init; }

    /// <summary>True where it is how a source records and no slip: once a person has closed it, further records of the kind do not open it again.</summary>
    public bool IsHabit { get; init; }

    /// <summary>
    /// The same for the same problem from refresh to refresh, whatever the words and revisions: a hash (64 hexadecimal digits)
    /// of kind, aircraft, aspect and subject.
    /// </summary>
    [JsonIgnore]
    public string Identity
    {
        get
        {
            var records = (Subject ?? Evidence).Select(k => $"{k.Source}\u001f{k.SourceRecordId}").Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
            return Hash([$"{(int)Kind}", Registration, OtherRegistration ?? "", Aspect ?? "", .. records]);
        }
    }

    /// <summary>
    /// The same while what a person would look at is the same (64 hexadecimal digits): the records of the evidence with their
    /// revisions; for look-alike marks the marks alone, since a new revision of an aircraft says nothing about its mark; for a habit of a
    /// source the habit alone.
    /// </summary>
    [JsonIgnore]
    public string Fingerprint => Kind == DataProblemKind.LookAlikeMarks || IsHabit
        ? Identity
        : Hash([Identity, .. Evidence.Select(k => $"{k.Source}\u001f{k.SourceRecordId}\u001f{k.Revision}").Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]);

    private static string Hash(IEnumerable<string> parts) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\u001e', parts))));
}
