using FleetTrend.Observations.Timelines;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Recurrences;

/// <summary>Which findings of a location are one event: those that a source links, whichever names the other, and those that a person has merged.</summary>
internal sealed class SameEvent
{
    private readonly Dictionary<(string Source, string Id), (string Source, string Id)> links = [];

    public SameEvent(IReadOnlyList<Recorded<Finding>> findings, IReadOnlyList<MergedFinding> merges)
    {
        var known = findings.Select(f => (f.Key.Source, f.Key.SourceRecordId)).ToHashSet();
        foreach (var finding in findings.Where(f => f.Content.SameEventAs is not null))
        {
            var other = (finding.Key.Source, finding.Content.SameEventAs!);
            if (known.Contains(other))
                Join((finding.Key.Source, finding.Key.SourceRecordId), other);
        }

        foreach (var merge in merges)
            Join((merge.Merged.Key.Source, merge.Merged.Key.SourceRecordId), (merge.Kept.Key.Source, merge.Kept.Key.SourceRecordId));
    }

    /// <summary>One name for all findings of one event; a finding that stands alone has its own.</summary>
    public (string Source, string Id) NameOf(RecordKey key) => Root((key.Source, key.SourceRecordId));

    private void Join((string Source, string Id) one, (string Source, string Id) other)
    {
        var (a, b) = (Root(one), Root(other));
        if (a == b)
            return;
        var order = string.CompareOrdinal(a.Source, b.Source) is var bySource and not 0 ? bySource : string.CompareOrdinal(a.Id, b.Id);
        var (low, high) = order < 0 ? (a, b) : (b, a);
        links[high] = low;
    }

    private (string Source, string Id) Root((string Source, string Id) name)
    {
        while (links.TryGetValue(name, out var next))
            name = next;
        return name;
    }
}
