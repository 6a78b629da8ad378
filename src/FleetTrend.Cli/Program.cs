using FleetTrend.Cli.Commands;
using Spectre.Console.Cli;

var app = new CommandApp();
app.Configure(config =>
{
    config.SetApplicationName("fleettrend");
    AnalyzeBranch.Add(config);
});
return await app.RunAsync(args);
