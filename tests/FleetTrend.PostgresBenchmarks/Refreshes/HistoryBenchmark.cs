using FleetTrend.Worker.Jobs;

namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>What one as-of takes in the database, and what a week of them leaves behind.</summary>
internal static class HistoryBenchmark
{
    private const double MostMegabytesOfOne = 20;
    private const double MostMegabytesOfWeek = 1;
    private const int Days = 7;

    public static async Task RunAsync(BenchmarkRun run)
    {
        await using var fleet = await run.Fleets.CopyAsync(run.Size);
        run.Figures.Title($"History, {run.Size.Aircraft:N0} aircraft in {run.Size.TypeGroups} type groups");
        await using var workers = await Workers.StartAsync(fleet.Database, run.Folder);
        var results = await StoredResults.FindAsync(fleet.Database);
        await workers.RefreshAsync();
        var one = await results.MegabytesAsync();
        run.Figures.AtMost("stored by one as-of", one, "MB", MostMegabytesOfOne);
        run.Figures.Print("observations kept beside it", await results.KeptMegabytesAsync(), "MB");

        await using var inspections = new NewInspections(fleet);
        for (var day = 0; day < Days; day++)
        {
            await results.AgeByOneDayAsync();
            await inspections.AddAsync();
            await workers.RefreshAsync();
        }

        await workers.RunAsync<RemoveOldRowsJob>(job => job.RunAsync(CancellationToken.None));
        var week = await results.MegabytesAsync() - one;
        run.Figures.AtMost("left by a week with one inspection and one refresh a day", week, "MB", MostMegabytesOfWeek);
        run.Figures.Print("the same, per refresh", week / Days, "MB");
    }
}
