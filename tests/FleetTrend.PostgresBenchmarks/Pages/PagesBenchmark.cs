using System.Diagnostics;
using FleetTrend.Client;
using FleetTrend.PostgresBenchmarks.Fleets;
using FleetTrend.PostgresBenchmarks.Processes;
using FleetTrend.PostgresBenchmarks.Refreshes;
using FleetTrend.Store.Requests;
using FleetTrend.Worker.Jobs;

namespace FleetTrend.PostgresBenchmarks.Pages;

/// <summary>How long every page takes, and how large it is, while 20 people read and records come in.</summary>
internal static class PagesBenchmark
{
    private const double MostMilliseconds = 100;
    private const double MostMillisecondsOfSlow = 250;
    private const double MostKilobytes = 150;
    private const double Slow = 0.99;

    public static async Task RunAsync(BenchmarkRun run)
    {
        await using var fleet = await run.Fleets.CopyAsync(run.Size);
        await ComputeAsync(run, fleet);
        run.Figures.Title(
            $"Pages, {run.Size.Aircraft:N0} aircraft in {run.Size.TypeGroups} type groups, {PageReaders.Count} readers, "
            + "while intake runs");
        string key;
        await using (var intake = new DirectIntake(fleet.Database))
            key = await intake.MakeKeyAsync();
        await using var api = await ProductProcess.StartApiAsync(fleet.Database.ConnectionString, run.Folder);
        using var handler = new SocketsHttpHandler { AllowAutoRedirect = false };
        using var http = new HttpClient(handler) { BaseAddress = api.HttpUrl, Timeout = Timeout.InfiniteTimeSpan };
        await FirstPerson.SignInAsync(http, api.DataFolder);
        var kinds = await SitePages.FindAsync(http);

        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = api.GrpcUrl, Key = key });
        await using var steady = new SteadyIntake(channel, fleet.Operator.Registrations);
        var clock = Stopwatch.StartNew();
        var readers = new PageReaders(http, run.Settings.Seed);
        foreach (var kind in kinds)
        {
            var (milliseconds, bytes) = await readers.ReadAsync(kind, TimeSpan.FromSeconds(run.Settings.Seconds));
            var median = Figures.Median(milliseconds);
            run.Figures.AtMost($"{kind.Name}, median of {milliseconds.Count}", median, "ms", MostMilliseconds);
            run.Figures.AtMost($"{kind.Name}, p99", Figures.Quantile(milliseconds, Slow), "ms", MostMillisecondsOfSlow);
            run.Figures.AtMost($"{kind.Name}, size", bytes / 1e3, "kB", MostKilobytes);
        }

        run.Figures.Print("records accepted meanwhile", steady.Accepted / clock.Elapsed.TotalSeconds, "/s");
        run.Figures.Print("peak resident memory of the API", api.PeakMegabytes, "MB");
    }

    /// <summary>Trends and reports, as they are after the first week.</summary>
    private static async Task ComputeAsync(BenchmarkRun run, FilledFleet fleet)
    {
        await using var workers = await Workers.StartAsync(fleet.Database, run.Folder);
        await workers.RefreshAsync();
        var yesterday = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime).AddDays(-1);
        await new ReportRequests(fleet.Database.DataSource).AddAsync("benchmark", yesterday.AddDays(-6), yesterday, write: true, default);
        await workers.RunAsync<RequestedReportsJob>(job => job.RunAsync(CancellationToken.None));
    }
}
