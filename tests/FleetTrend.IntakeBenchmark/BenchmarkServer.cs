using FleetTrend.Api;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace FleetTrend.IntakeBenchmark;

/// <summary>What the child process runs: the API as it is shipped, without a log.</summary>
internal static class BenchmarkServer
{
    public const string Verb = "server";
    public const string DatabaseVariable = "BENCHMARK_DATABASE";

    /// <summary>Says where it listens on standard output, and stops when standard input closes.</summary>
    public static async Task RunAsync()
    {
        var settings = new HostSettings
        {
            Database = Environment.GetEnvironmentVariable(DatabaseVariable),
            GrpcAddress = NetworkAddress.Loopback(0),
            HttpAddress = NetworkAddress.Loopback(0),
            Access = new AccessSettings { CallsPerSecond = 1_000_000 },
        };
        await using var database = await HostDatabase.OpenAsync(settings, NullLoggerFactory.Instance, default);
        await using var app = ApiHost.Build([], settings, database, builder => builder.Logging.ClearProviders());
        await app.StartAsync();
        Console.WriteLine(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        await Console.In.ReadToEndAsync();
        await app.StopAsync();
    }
}
