using FleetTrend.PostgresBenchmarks.Fleets;
using FleetTrend.PostgresBenchmarks.Intake;
using FleetTrend.PostgresBenchmarks.Pages;
using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.PostgresBenchmarks.Refreshes;
using Spectre.Console.Cli;

namespace FleetTrend.PostgresBenchmarks;

/// <summary>Runs parts on one server.</summary>
internal sealed class BenchmarkCommand : AsyncCommand<BenchmarkSettings>
{
    /// <summary>All parts by name.</summary>
    public static IReadOnlyDictionary<string, Func<BenchmarkRun, Task>> Parts { get; } =
        new Dictionary<string, Func<BenchmarkRun, Task>>(StringComparer.Ordinal)
        {
            ["intake"] = IntakeBenchmark.RunAsync,
            ["refresh"] = RefreshBenchmark.RunAsync,
            ["history"] = HistoryBenchmark.RunAsync,
            ["workers"] = WorkersBenchmark.RunAsync,
            ["memory"] = MemoryBenchmark.RunAsync,
            ["pages"] = PagesBenchmark.RunAsync,
        };

    public override async Task<int> ExecuteAsync(
        CommandContext context, BenchmarkSettings settings, CancellationToken cancellationToken)
    {
        var parent = settings.Folder ?? Path.GetTempPath();
        var folder = Path.GetFullPath(Path.Combine(parent, $"fleettrend-benchmark-{Guid.NewGuid():N}"));
        Directory.CreateDirectory(folder);
        var figures = new Figures(Console.Out);
        try
        {
            await using var server = await BenchmarkServer.OpenAsync(settings.Database, folder);
            await using var fleets = new FilledFleets(server, settings.Seed, figures);
            foreach (var part in settings.Parts)
                await Parts[part](new BenchmarkRun(settings, server, fleets, folder, figures));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return settings.Strict && figures.Missed > 0 ? 1 : 0;
    }
}
