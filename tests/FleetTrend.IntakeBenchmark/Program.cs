// Prints how fast findings come in through the gRPC stream, acknowledged and durable, as a ratio to psql \copy of the same rows into
// the same tables on the same server in the same run; how that changes as the tables grow; unary latency; and the server's memory.
//   dotnet run -c Release --project tests/FleetTrend.IntakeBenchmark [-- MOST_STORED [FOLDER]]
// MOST_STORED: findings stored at the end of the growth (default 5,000,000). Needs PostgreSQL's programs, psql among them.
// Ends with 1 when a figure misses its floor.
using System.Diagnostics;
using System.Globalization;
using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntakeBenchmark;
using FleetTrend.Store;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using Grpc.Net.Client;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

const int Batch = 100_000;
const int Rounds = 3;
const double LeastRatio = 0.5;
const double LeastFlatness = 0.8;

if (args is [BenchmarkServer.Verb])
{
    await BenchmarkServer.RunAsync();
    return 0;
}

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var mostStored = args.Length > 0 ? long.Parse(args[0], CultureInfo.InvariantCulture) : 5_000_000;
var folder = args.Length > 1 ? args[1] : Path.Combine(Path.GetTempPath(), $"fleettrend-intake-{Guid.NewGuid():N}");
Directory.CreateDirectory(folder);
var settings = new HostSettings { DataFolder = Path.Combine(folder, "data") };
var database = await HostDatabase.OpenAsync(settings, NullLoggerFactory.Instance, default);
string key;
await using (var services = new ServiceCollection().AddFleetTrendStore(database.ConnectionString).BuildServiceProvider())
{
    await StoreSchema.MigrateAsync(services, default);
    await services.GetRequiredService<SourceStore>().AddAsync(BenchmarkFleet.Source, "Synthetic benchmark source", default);
    key = (await services.GetRequiredService<KeyStore>().AddAsync("benchmark", BenchmarkFleet.Source, Enum.GetValues<KeyScope>(), default))!.Text;
}

var copy = new PlainCopy(database.DataSource, database.ConnectionString, folder);
var missed = 0;
var next = 1L;

await using (var server = await ServerProcess.StartAsync(database.ConnectionString))
{
    using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = server.Address, Key = key });
    await BenchmarkFleet.RegisterAsync(channel);
    await StreamAsync(channel, 20_000); // compiles what runs

    Console.WriteLine($"{"stored",12} {"stream/s",10} {"copy/s",10} {"ratio",6} {"floor",6}");
    var rates = new List<double>();
    foreach (var size in new[] { 100_000L, 1_000_000L, 5_000_000L }.Where(s => s <= mostStored))
    {
        await FillToAsync(size);
        var pairs = new List<(double Stream, double Copy)>();
        for (var round = 0; round < Rounds; round++)
            pairs.Add((await StreamAsync(channel, Batch), await CopyAsync()));
        var stream = Batch / Median(pairs.Select(p => p.Stream));
        var plain = Batch / Median(pairs.Select(p => p.Copy));
        rates.Add(stream);
        Console.WriteLine($"{size,12:N0} {stream,10:N0} {plain,10:N0} {stream / plain,6:F2} {LeastRatio,6:F2} {Verdict(stream / plain >= LeastRatio)}");
    }

    Console.WriteLine($"slowest size against the first: {rates.Min() / rates[0]:F2}, floor {LeastFlatness:F2} {Verdict(rates.Min() / rates[0] >= LeastFlatness)}");
    await PrintLatencyAsync(channel);
    await PrintMemoryAsync(server, channel);
}

await database.DisposeAsync();
Directory.Delete(folder, recursive: true);
return missed == 0 ? 0 : 1;

async Task<double> StreamAsync(GrpcChannel channel, int count)
{
    var records = PlainCopy.Numbers(next, count).Select(BenchmarkFleet.Finding).ToList();
    next += count;
    return await StreamClient.PushAsync(channel, records);
}

async Task<double> CopyAsync()
{
    var seconds = await copy.RunAsync(next, Batch);
    next += Batch;
    return seconds;
}

async Task FillToAsync(long size)
{
    const int Step = 500_000;
    while (next <= size)
    {
        var count = Math.Min(Step, size - next + 1);
        await BenchmarkFleet.FillAsync(database.DataSource, next, count);
        next += count;
        Console.Error.WriteLine($"  stored {next - 1:N0} of {size:N0}");
    }

    await using var command = database.DataSource.CreateCommand("analyze records; analyze findings");
    await command.ExecuteNonQueryAsync();
}

async Task PrintLatencyAsync(GrpcChannel channel)
{
    var intake = new IntakeService.IntakeServiceClient(channel);
    var milliseconds = new List<double>();
    for (var i = 0; i < 2_200; i++)
    {
        var record = BenchmarkFleet.Finding(next++);
        var clock = Stopwatch.StartNew();
        await intake.PushRecordAsync(new PushRecordRequest { Record = record });
        if (i >= 200)
            milliseconds.Add(clock.Elapsed.TotalMilliseconds);
    }

    milliseconds.Sort();
    Console.WriteLine($"unary, one after another: p50 {milliseconds[1_000]:F1} ms, p99 {milliseconds[1_980]:F1} ms over 2,000 calls");
}

async Task PrintMemoryAsync(ServerProcess server, GrpcChannel channel)
{
    const int Count = 1_000_000;
    var samples = new List<double>();
    var records = PlainCopy.Numbers(next, Count).Select(BenchmarkFleet.Finding);
    next += Count;
    var seconds = await StreamClient.PushAsync(channel, records, acknowledged =>
    {
        if (acknowledged % 100_000 == 0)
            samples.Add(server.ResidentMebibytes);
    });
    var isFlat = samples[^1] <= samples[1] * 1.25;
    Console.WriteLine($"memory over a stream of {Count:N0} ({Count / seconds:N0}/s): {string.Join(" ", samples.Select(s => $"{s:F0}"))} MiB per 100,000 {Verdict(isFlat)}");
}

string Verdict(bool holds)
{
    if (!holds)
        missed++;
    return holds ? "ok" : "MISSED";
}

static double Median(IEnumerable<double> values)
{
    var sorted = values.Order().ToList();
    return sorted[sorted.Count / 2];
}
