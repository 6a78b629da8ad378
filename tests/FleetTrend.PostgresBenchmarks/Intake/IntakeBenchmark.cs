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

    private readonly BenchmarkRun _run;
    private readonly BenchmarkDatabase _database;
    private readonly ProductProcess _server;
    private readonly GrpcChannel _channel;
    private readonly PlainCopy _copy;
    private readonly int _batch;
    private long _next = 1;

    private IntakeBenchmark(BenchmarkRun run, BenchmarkDatabase database, ProductProcess server, GrpcChannel channel)
    {
        _run = run;
        _database = database;
        _server = server;
        _channel = channel;
        _copy = new PlainCopy(database, run.Folder);
        _batch = (int)Math.Min(LargestBatch, run.Settings.MostStored);
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
        var sizes = new[] { 100_000L, 1_000_000L, 5_000_000L }.Where(s => s <= _run.Settings.MostStored);
        foreach (var size in sizes.DefaultIfEmpty(_batch))
        {
            await FillToAsync(size);
            var pairs = new List<(double Stream, double Copy)>();
            for (var round = 0; round < _run.Settings.Rounds; round++)
                pairs.Add((await StreamAsync(_batch), await CopyAsync()));
            var stream = _batch / Figures.Median(pairs.Select(p => p.Stream));
            var plain = _batch / Figures.Median(pairs.Select(p => p.Copy));
            rates.Add(stream);
            _run.Figures.Title($"Intake, {size:N0} findings stored");
            _run.Figures.Print("findings through one stream", stream, "/s");
            _run.Figures.Print("psql \\copy of the same", plain, "/s");
            _run.Figures.AtLeast("stream over \\copy", stream / plain, "x", LeastRatio);
        }

        _run.Figures.Title("Intake");
        _run.Figures.AtLeast("slowest size against the first", rates.Min() / rates[0], "x", LeastFlatness);
    }

    private async Task PrintLatencyAsync()
    {
        var intake = new IntakeService.IntakeServiceClient(_channel);
        var milliseconds = new List<double>();
        for (var i = 0; i < UnaryCallsBefore + UnaryCalls; i++)
        {
            var record = BenchmarkFleet.Finding(_next++);
            var start = Stopwatch.GetTimestamp();
            await intake.PushRecordAsync(new PushRecordRequest { Record = record });
            if (i >= UnaryCallsBefore)
                milliseconds.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        var name = $"PushRecord, one after another, median of {UnaryCalls:N0}";
        _run.Figures.Print(name, Figures.Median(milliseconds), "ms");
        _run.Figures.Print("PushRecord, p99", Figures.Quantile(milliseconds, 0.99), "ms");
    }

    private async Task PrintMemoryAsync()
    {
        var samples = new List<double>();
        var count = (int)Math.Min(LongestStream, _run.Settings.MostStored);
        var records = PlainCopy.Numbers(_next, count).Select(BenchmarkFleet.Finding);
        _next += count;
        await StreamClient.PushAsync(_channel, records, acknowledged =>
        {
            if (acknowledged % (count / Samples) == 0)
                samples.Add(_server.ResidentMegabytes);
        });
        _run.Figures.Print($"resident memory after a fifth of a stream of {count:N0}", samples[1], "MB");
        _run.Figures.AtMost("memory at its end against that", samples[^1] / samples[1], "x", MostMemoryGrowth);
    }

    private async Task<double> StreamAsync(int count)
    {
        var records = PlainCopy.Numbers(_next, count).Select(BenchmarkFleet.Finding).ToList();
        _next += count;
        return await StreamClient.PushAsync(_channel, records);
    }

    private async Task<double> CopyAsync()
    {
        var seconds = await _copy.RunAsync(_next, _batch);
        _next += _batch;
        return seconds;
    }

    private async Task FillToAsync(long size)
    {
        const int Step = 500_000;
        while (_next <= size)
        {
            var count = Math.Min(Step, size - _next + 1);
            await BenchmarkFleet.FillAsync(_database.DataSource, _next, count);
            _next += count;
        }

        await _database.ExecuteAsync("analyze records");
        await _database.ExecuteAsync("analyze findings");
    }
}
