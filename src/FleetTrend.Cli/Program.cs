using FleetTrend.Cli.Commands;
using Spectre.Console.Cli;

var app = new CommandApp();
app.Configure(config =>
{
    config.SetApplicationName("fleettrend");
    AnalyzeBranch.Add(config);
    config.AddCommand<ServeCommand>("serve")
        .WithDescription("Runs API, pages and worker together, on a local PostgreSQL unless FLEETTREND_DATABASE names one.");
    config.AddCommand<DemoCommand>("demo")
        .WithDescription("Pushes a synthetic fleet with planted trouble, makes the report, and says what was found.");
});
return await app.RunAsync(args);
