using FleetTrend.Store.DataProblems;

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>data_checks</c>.</summary>
internal sealed class DataProblemRow
{
    public long Id { get; set; }

    public string Identity { get; set; } = "";

    public string Fingerprint { get; set; } = "";

    public string Kind { get; set; } = "";

    public string? Registration { get; set; }

    public string? OtherRegistration { get; set; }

    public DateOnly ProblemDate { get; set; }

    public string Rule { get; set; } = "";

    public string Description { get; set; } = "";

    /// <summary>Record keys as JSON: <c>[{"source", "sourceRecordId", "revision"}]</c>.</summary>
    public string EvidenceJson { get; set; } = "";

    public DataProblemState State { get; set; }

    public DateTimeOffset SinceTime { get; set; }

    public DateTimeOffset LastSeenTime { get; set; }

    public DateTimeOffset? GoneTime { get; set; }

    public string? ClosedBy { get; set; }

    public string? CloseNote { get; set; }

    public DateTimeOffset? CloseTime { get; set; }
}
