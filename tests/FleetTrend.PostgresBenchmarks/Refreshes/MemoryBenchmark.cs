using FleetTrend.Synthetic;

namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>How a refresh's memory grows with the fleet.</summary>
internal static class MemoryBenchmark
{
    private const int Times = 4;
    private const double MostTimes = 1.5;

    public static async Task RunAsync(BenchmarkRun run)
    {
        var small = await PeakAsync(run, run.Size);
        var large = await PeakAsync(run, run.Size with { Aircraft = Times * run.Size.Aircraft });
        run.Figures.AtMost($"peak memory with {Times} times the aircraft", large / small, "x", MostTimes);
    }

    /// <summary>Of a worker that has computed everything twice.</summary>
    private static async Task<double> PeakAsync(BenchmarkRun run, OperatorSize size)
    {
        await using var fleet = await run.Fleets.CopyAsync(size);
        run.Figures.Title($"Memory, {size.Aircraft:N0} aircraft in {size.TypeGroups} type groups");
        await using var workers = await Workers.StartAsync(fleet.Database, run.Folder);
        var results = await StoredResults.FindAsync(fleet.Database);
        run.Figures.Print("resident before", workers.Processes[0].ResidentMegabytes, "MB");
        await workers.RefreshAsync();
        await results.EmptyAsync();
        var full = await workers.RefreshAsync();
        var peak = workers.Processes[0].PeakMegabytes;
        run.Figures.Print("full refresh", full.Wall, "s");
        run.Figures.Print("peak resident memory of the worker", peak, "MB");
        return peak;
    }
}
