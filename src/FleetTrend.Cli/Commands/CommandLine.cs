using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>All commands.</summary>
internal static class CommandLine
{
    /// <summary>Runs the command that the arguments name.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        var app = new CommandApp();
        app.Configure(config =>
        {
            config.SetApplicationName("fleettrend");
            config.UseStrictParsing(); // a misspelt option is refused, not passed over
            config.SetExceptionHandler((failure, _) => Explain(failure));
            AnalyzeBranch.Add(config);
            KeysBranch.Add(config);
            config.AddCommand<ServeCommand>("serve")
                .WithDescription("Runs API, pages and worker together, on a local PostgreSQL unless FLEETTREND_DATABASE names one.");
            config.AddCommand<DemoCommand>("demo")
                .WithDescription("Pushes a synthetic fleet with planted trouble, makes the report, and says what was found.");
            config.AddCommand<ImportCommand>("import")
                .WithDescription("Pushes a folder of CSV files through the stream of records; refused rows come back with their reason.")
                .WithExample("import", "winter", "--source", "shop-cards");
            config.AddCommand<ExportCommand>("export")
                .WithDescription("Writes all records into a folder of CSV files, as import reads them.")
                .WithExample("export", "winter", "--source", "shop-cards");
            config.AddCommand<BackTestCommand>("backtest")
                .WithDescription("Replays the records week by week: when each call would have come, beside alert levels. Reads the local database, or that of FLEETTREND_DATABASE.")
                .WithExample("backtest", "--type-group", "four-cylinder", "--plot", "calls.svg");
            config.AddCommand<SendTestCommand>("send-test")
                .WithDescription("Checks name, connection, TLS, key, scope, source, clock and a record that is not stored; says what is wrong and what to do.")
                .WithExample("send-test", "https://trends.example:5081");
        });
        var code = await app.RunAsync(args);
        return code == ExitCode.Failed && args is ["analyze" or "keys"] ? ExitCode.BadInput : code; // a branch alone prints its help
    }

    // Arguments that make no sense are the user's to mend, and end as bad input does; anything else is our fault and shown whole.
    private static int Explain(Exception failure)
    {
        if (failure is OperationCanceledException)
            return ExitCode.Failed;
        var isUsage = failure is CommandAppException;
        Console.Error.WriteLine(isUsage ? $"{InWords(failure.Message)}\n'fleettrend --help' lists the commands, 'fleettrend COMMAND --help' what one takes." : failure);
        return isUsage ? ExitCode.BadInput : ExitCode.Failed;
    }

    /// <summary>The library names the type of an option as the code does.</summary>
    private static string InWords(string message) => message
        .Replace("Int32", "a whole number", StringComparison.Ordinal).Replace("Double", "a number", StringComparison.Ordinal);
}
