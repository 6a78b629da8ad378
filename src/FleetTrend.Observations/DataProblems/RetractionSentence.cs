using FleetTrend.Records.Sources;
using FleetTrend.Records.Texts;

namespace FleetTrend.Observations.DataProblems;

/// <summary>The sentence about a retraction whose record never came.</summary>
public static class RetractionSentence
{
    /// <summary>Who took back what, and the reason as the source wrote it, quoted; an empty reason is left out.</summary>
    /// <param name="key">The retraction.</param>
    /// <param name="reason">Its reason, as sent.</param>
    public static string Write(RecordKey key, string reason)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(reason);
        var what = $"{key.Source} took back {ForeignText.Identifier(key.SourceRecordId)}, which it never sent.";
        return string.IsNullOrWhiteSpace(reason) ? what : $"{what} The reason that {key.Source} gave: {ForeignText.Quoted(reason)}.";
    }
}
