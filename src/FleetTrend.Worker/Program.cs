using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Worker;

var configuration = new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(args).Build();
var settings = HostSettings.Read(configuration);
using var loggers = LoggerFactory.Create(logging => logging.AddSimpleConsole());
await using var database = await HostDatabase.OpenAsync(settings, loggers, CancellationToken.None);
await using var app = WorkerHost.Build(args, settings, database);
await WorkerHost.PrepareAsync(app, CancellationToken.None);
await app.RunAsync();
