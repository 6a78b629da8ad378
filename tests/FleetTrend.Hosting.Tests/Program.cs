using FleetTrend.Hosting.LocalPostgres;
using Microsoft.Extensions.Logging.Abstractions;

// A product process reduced to its local PostgreSQL: starts it in the folder given, says where, leaves it when its
// standard input closes. Tests run this program as a child and kill it.
await using var server = await LocalPostgresServer.StartAsync(
    new LocalPostgresOptions { DataFolder = args[0] }, NullLogger.Instance, CancellationToken.None);
Console.WriteLine($"{server.ProcessId} {server.ConnectionString}");
await Console.In.ReadToEndAsync();
