// Measures the product on a PostgreSQL against floors; README.md beside this file says what each part prints.
using FleetTrend.PostgresBenchmarks;
using Spectre.Console.Cli;

return await new CommandApp<BenchmarkCommand>().RunAsync(args);
