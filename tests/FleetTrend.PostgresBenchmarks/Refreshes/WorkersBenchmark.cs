namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>How much faster two workers are than one, each with one processor: how the work is spread, whatever the machine has.</summary>
internal static class WorkersBenchmark
{
    private const double LeastTimes = 1.6;
    private const double LeastShare = 0.25;

    public static async Task RunAsync(BenchmarkRun run)
    {
        await using var fleet = await run.Fleets.CopyAsync(run.Size);
        run.Figures.Title($"Workers, {run.Size.Aircraft:N0} aircraft in {run.Size.TypeGroups} type groups");
        await using var workers = await Workers.StartAsync(fleet.Database, run.Folder, processors: 1);
        var results = await StoredResults.FindAsync(fleet.Database);
        var one = await MedianAsync(run, workers, results);
        run.Figures.Print("full refresh by one worker", one.Wall, "s");
        await workers.AddAsync();
        var two = await MedianAsync(run, workers, results);
        run.Figures.Print("full refresh by two workers", two.Wall, "s");
        if (two.Processor.Min() < LeastShare * two.Processor.Sum())
            run.Figures.NotYet("two workers against one", "one of them does nearly all of it");
        else
            run.Figures.AtLeast("two workers against one", one.Wall / two.Wall, "x", LeastTimes);
    }

    /// <summary>After a first one that compiles what runs.</summary>
    private static async Task<RefreshCost> MedianAsync(BenchmarkRun run, Workers workers, StoredResults results)
    {
        var costs = new List<RefreshCost>();
        for (var round = 0; round <= run.Settings.Rounds; round++)
        {
            await results.EmptyAsync();
            costs.Add(await workers.RefreshAsync());
        }

        return RefreshCost.Median(costs[1..]);
    }
}
