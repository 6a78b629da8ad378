namespace FleetTrend.Store.DataProblems;

/// <summary>A data problem with its state.</summary>
public sealed record StoredDataProblem
{
    /// <summary>Identifier; higher is newer.</summary>
    public required long ProblemId { get; init; }

    /// <summary>What it says, by the latest refresh that saw it.</summary>
    public required FoundDataProblem Found { get; init; }

    /// <summary>Open, closed or gone.</summary>
    public required DataProblemState State { get; init; }

    /// <summary>As-of time of the refresh that saw it first.</summary>
    public required DateTimeOffset SinceTime { get; init; }

    /// <summary>As-of time of the latest refresh that saw it.</summary>
    public required DateTimeOffset LastSeenTime { get; init; }

    /// <summary>As-of time of the refresh that saw it no more, or saw other evidence; null while the records say so.</summary>
    public DateTimeOffset? GoneTime { get; init; }

    /// <summary>Who closed it, as told; null where nobody did.</summary>
    public string? ClosedBy { get; init; }

    /// <summary>How, as told.</summary>
    public string? CloseNote { get; init; }

    /// <summary>When.</summary>
    public DateTimeOffset? CloseTime { get; init; }
}
