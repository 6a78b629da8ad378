namespace FleetTrend.Statistics;

/// <summary>
/// Why a number was not computed: the typed answer in place of NaN, null or a figure that looks firm.
/// </summary>
/// <param name="Kind">The reason, for programs.</param>
/// <param name="Events">Events (failures, recurrences) in the data, so that "not enough data" can say how many.</param>
/// <param name="Explanation">The reason in one sentence, for people.</param>
public sealed record NotEstimable(NotEstimableKind Kind, long Events, string Explanation);
