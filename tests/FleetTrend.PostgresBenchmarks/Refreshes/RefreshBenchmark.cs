using FleetTrend.Synthetic;

namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>What a full refresh takes, against copying the same rows, and what one takes after one inspection.</summary>
internal static class RefreshBenchmark
{
    private const double MostOverCopy = 4;
    private const double MostMegabytes = 500;
    private const double MostShareOfOneGroup = 35;
    private const double MostShareOfTenGroups = 10;
    private const double MostShareOfLimits = 20;
    private const int ManyGroups = 10;

    public static async Task RunAsync(BenchmarkRun run)
    {
        foreach (var groups in run.Settings.Groups is { } asked ? [asked] : new[] { ManyGroups, 1 })
            await RunAsync(run, run.Size with { TypeGroups = groups });
    }

    private static async Task RunAsync(BenchmarkRun run, OperatorSize size)
    {
        await using var fleet = await run.Fleets.CopyAsync(size);
        run.Figures.Title($"Refresh, {size.Aircraft:N0} aircraft in {size.TypeGroups} type groups");
        await using var workers = await Workers.StartAsync(fleet.Database, run.Folder);
        var results = await StoredResults.FindAsync(fleet.Database);
        Print(run.Figures, "full refresh, first of its process", await workers.RefreshAsync());
        var copies = new List<double>();
        var full = await MedianAsync(run, workers, async () =>
        {
            await results.EmptyAsync();
            copies.Add(await CopyOut.TimeAsync(fleet.Database)); // beside each refresh, so that a busy machine slows both
        });
        var copy = Figures.Median(copies);
        Print(run.Figures, "full refresh", full);
        run.Figures.Print("COPY ... TO of the rows", copy, "s");
        run.Figures.AtMost("full refresh over COPY ... TO", full.Wall / copy, "x", MostOverCopy);
        run.Figures.AtMost("peak resident memory of the worker", workers.Processes[0].PeakMegabytes, "MB", MostMegabytes);

        run.Figures.AtMost(
            "limits of the calls, share of that processor time", 100 * await LimitsCost.MeasureAsync(fleet.Database) / full.Processor.Sum(), "%", MostShareOfLimits);

        await using var inspections = new NewInspections(fleet);
        var after = await MedianAsync(run, workers, inspections.AddAsync);
        var mostShare = size.TypeGroups >= ManyGroups ? MostShareOfTenGroups : MostShareOfOneGroup;
        Print(run.Figures, "refresh after one inspection", after);
        run.Figures.AtMost("refresh after one inspection, share of a full one", 100 * after.Wall / full.Wall, "%", mostShare);
        run.Figures.AtMost("the same, of processor time", 100 * after.Processor.Sum() / full.Processor.Sum(), "%", mostShare);
    }

    private static async Task<RefreshCost> MedianAsync(BenchmarkRun run, Workers workers, Func<Task> prepare)
    {
        var costs = new List<RefreshCost>();
        for (var round = 0; round < run.Settings.Rounds; round++)
        {
            await prepare();
            costs.Add(await workers.RefreshAsync());
        }

        return RefreshCost.Median(costs);
    }

    private static void Print(Figures figures, string name, RefreshCost cost)
    {
        figures.Print(name, cost.Wall, "s");
        figures.Print($"{name}, processor", cost.Processor.Sum(), "s");
    }
}
