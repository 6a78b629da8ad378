using System.Diagnostics;
using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.PostgresBenchmarks.Processes;
using FleetTrend.Store;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using Grpc.Net.Client;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.PostgresBenchmarks.Intake;

/// <summary>How fast findings come in through the gRPC stream, acknowledged and durable, against psql \copy of the same rows
/// into the same tables; how that changes as the tables grow; unary latency; and the server's memory.</summary>
internal sealed class IntakeBenchmark
{
    private const int LargestBatch = 100_000;
    private const int UnaryCalls = 2_000;
    private const int UnaryCallsBefore = 200;
    private const int LongestStream = 1_000_000;
    private const int Samples = 10;
    private const double LeastRatio = 0.5;
    private const double LeastFlatness = 0.8;
    private const double MostMemoryGrowth = 1.25;

    private readonly BenchmarkRun run;
    private readonly BenchmarkDatabase filledDatabase;
    private readonly ProductProcess api;
    private readonly GrpcChannel openChannel;
    private readonly PlainCopy copy;
    private readonly int batch;
    private long next = 1;

    private IntakeBenchmark(BenchmarkRun run, BenchmarkDatabase database, ProductProcess server, GrpcChannel channel)
    {
        this.run = run;
        filledDatabase = database;
        api = server;
        openChannel = channel;
        copy = new PlainCopy(database, run.Folder);
        batch = (int)Math.Min(LargestBatch, run.Settings.MostStored);
    }

    public static async Task RunAsync(BenchmarkRun run)
    {
        await using var database = await run.Server.CreateAsync();
        var key = await PrepareAsync(database);
        await using var server = await ProductProcess.StartApiAsync(database.ConnectionString, run.Folder);
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = server.GrpcUrl, Key = key });
        await BenchmarkFleet.RegisterAsync(channel);
        var benchmark = new IntakeBenchmark(run, database, server, channel);
        await benchmark.StreamAsync(20_000); // compiles what runs
        await benchmark.PrintRatesAsync();
        await benchmark.PrintLatencyAsync();
        await benchmark.PrintMemoryAsync();
    }

    /// <returns>A key that may push.</returns>
    private static async Task<string> PrepareAsync(BenchmarkDatabase database)
    {
        await using var services =
            new ServiceCollection().AddFleetTrendStore(database.ConnectionString).BuildServiceProvider();
        await StoreSchema.MigrateAsync(services, default);
        var sources = services.GetRequiredService<SourceStore>();
        await sources.AddAsync(BenchmarkFleet.Source, "Synthetic benchmark source", default);
        var keys = services.GetRequiredService<KeyStore>();
        return (await keys.AddAsync("benchmark", BenchmarkFleet.Source, Enum.GetValues<KeyScope>(), default))!.Text;
    }

    private async Task PrintRatesAsync()
    {
        var rates = new List<double>();
        var sizes = new[] { 100_000L, 1_000_000L, 5_000_000L }.Where(s => s <= run.Settings.MostStored);
        foreach (var size in sizes.DefaultIfEmpty(batch))
        {
            await FillToAsync(size);
            var pairs = new List<(double Stream, double Copy)>();
            for (var round = 0; round < run.Settings.Rounds; round++)
                pairs.Add((await StreamAsync(batch), await CopyAsync()));
            var stream = batch / Figures.Median(pairs.Select(p => p.Stream));
            var plain = batch / Figures.Median(pairs.Select(p => p.Copy));
            rates.Add(stream);
            run.Figures.Title($"Intake, {size:N0} findings stored");
            run.Figures.Print("findings through one stream", stream, "/s");
            run.Figures.Print("psql \\copy of the same", plain, "/s");
            run.Figures.AtLeast("stream over \\copy", stream / plain, "x", LeastRatio);
        }

        run.Figures.Title("Intake");
        run.Figures.AtLeast("slowest size against the first", rates.Min() / rates[0], "x", LeastFlatness);
    }

    private async Task PrintLatencyAsync()
    {
        var intake = new IntakeService.IntakeServiceClient(openChannel);
        var milliseconds = new List<double>();
        for (var i = 0; i < UnaryCallsBefore + UnaryCalls; i++)
        {
            var record = BenchmarkFleet.Finding(next++);
            var start = Stopwatch.GetTimestamp();
            await intake.PushRecordAsync(new PushRecordRequest { Record = record });
            if (i >= UnaryCallsBefore)
                milliseconds.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        var name = $"PushRecord, one after another, median of {UnaryCalls:N0}";
        run.Figures.Print(name, Figures.Median(milliseconds), "ms");
        run.Figures.Print("PushRecord, p99", Figures.Quantile(milliseconds, 0.99), "ms");
    }

    private async Task PrintMemoryAsync()
    {
        var samples = new List<double>();
        var count = (int)Math.Min(LongestStream, run.Settings.MostStored);
        var records = PlainCopy.Numbers(next, count).Select(BenchmarkFleet.Finding);
        next += count;
        await StreamClient.PushAsync(openChannel, records, acknowledged =>
        {
            if (acknowledged % (count / Samples) == 0)
                samples.Add(api.ResidentMegabytes);
        });
        run.Figures.Print($"resident memory after a fifth of a stream of {count:N0}", samples[1], "MB");
        run.Figures.AtMost("memory at its end against that", samples[^1] / samples[1], "x", MostMemoryGrowth);
    }

    private async Task<double> StreamAsync(int count)
    {
        var records = PlainCopy.Numbers(next, count).Select(BenchmarkFleet.Finding).ToList();
        next += count;
        return await StreamClient.PushAsync(openChannel, records);
    }

    private async Task<double> CopyAsync()
    {
        var seconds = await copy.RunAsync(next, batch);
        next += batch;
        return seconds;
    }

    private async Task FillToAsync(long size)
    {
        const int Step = 500_000;
        while (next <= size)
        {
            var count = Math.Min(Step, size - next + 1);
            await BenchmarkFleet.FillAsync(filledDatabase.DataSource, next, count);
            next += count;
        }

        await filledDatabase.ExecuteAsync("analyze records");
        await filledDatabase.ExecuteAsync("analyze findings");
    }
}
