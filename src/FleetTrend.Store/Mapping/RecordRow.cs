using FleetTrend.Records;

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>records</c>: the envelope of everything pushed. Rows are added and never changed.</summary>
internal sealed class RecordRow
{
    public long Id { get; set; }

    public int SourceId { get; set; }

    public string SourceRecordId { get; set; } = "";

    public int Revision { get; set; }

    public RecordKind Kind { get; set; }

    public int? AircraftId { get; set; }

    public DateTimeOffset AcceptTime { get; set; }

    public byte[] ContentHash { get; set; } = [];
}
