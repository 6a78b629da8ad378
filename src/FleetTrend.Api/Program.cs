using FleetTrend.Api;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;

var configuration = new ConfigurationBuilder().AddEnvironmentVariables().AddCommandLine(args).Build();
var settings = HostSettings.Read(configuration);
using var loggers = LoggerFactory.Create(logging => logging.AddSimpleConsole());
await using var database = await HostDatabase.OpenAsync(settings, loggers, CancellationToken.None);
await using var app = ApiHost.Build(args, settings, database);
await ApiHost.PrepareAsync(app, CancellationToken.None);
await app.RunAsync();
