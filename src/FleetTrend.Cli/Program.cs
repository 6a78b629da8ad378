using FleetTrend.Cli.Commands;

return await CommandLine.RunAsync(args);
