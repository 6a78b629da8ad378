namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>What a refresh took.</summary>
/// <param name="Wall">Seconds from the start of its job until nothing is owed any more.</param>
/// <param name="Processor">Seconds of processor time, per worker.</param>
internal sealed record RefreshCost(double Wall, IReadOnlyList<double> Processor)
{
    /// <summary>The median of several.</summary>
    public static RefreshCost Median(IReadOnlyList<RefreshCost> costs) => costs.OrderBy(c => c.Wall).ElementAt(costs.Count / 2);
}
