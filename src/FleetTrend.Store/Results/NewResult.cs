namespace FleetTrend.Store.Results;

/// <summary>The answers of an analysis about one subject, to be stored.</summary>
/// <param name="Analysis">Name of the analysis.</param>
/// <param name="Registration">The aircraft; null where it is about none.</param>
/// <param name="Location">Path of the location; null where it is about none.</param>
/// <param name="Kind">Name of the kind; null where it is about none.</param>
/// <param name="Base">The base; null where it is about none.</param>
/// <param name="Count">How many answers.</param>
/// <param name="Headlines">Figures whose history is kept.</param>
/// <param name="Detail">The answers as JSON in UTF-8.</param>
public sealed record NewResult(
    string Analysis, string? Registration, string? Location, string? Kind, string? Base, int Count,
    IReadOnlyList<StoredHeadline> Headlines, byte[] Detail);
