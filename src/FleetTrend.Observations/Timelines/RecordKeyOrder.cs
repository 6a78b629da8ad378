using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>The order of records that share a day: by source, then identifier, so that the order of arrival means nothing.</summary>
internal sealed class RecordKeyOrder : IComparer<RecordKey>
{
    public static readonly RecordKeyOrder Instance = new();

    private RecordKeyOrder()
    {
    }

    public int Compare(RecordKey? x, RecordKey? y)
    {
        var bySource = string.CompareOrdinal(x?.Source, y?.Source);
        if (bySource != 0)
            return bySource;
        var byId = string.CompareOrdinal(x?.SourceRecordId, y?.SourceRecordId);
        return byId != 0 ? byId : Comparer<int?>.Default.Compare(x?.Revision, y?.Revision);
    }
}
