using System.ComponentModel;
using FleetTrend.Cli.SendTest;
using FleetTrend.Client;
using Spectre.Console;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>fleettrend send-test ADDRESS.</summary>
internal sealed class SendTestCommand : AsyncCommand<SendTestCommand.Settings>
{
    /// <summary>Options of the test.</summary>
    internal sealed class Settings : CallerSettings
    {
        /// <summary>Where records will go.</summary>
        [CommandArgument(0, "<ADDRESS>")]
        [Description("Address of gRPC, https://HOST:PORT, or http://HOST:PORT without TLS.")]
        public string Address { get; init; } = "";

        /// <summary>The source that records will name.</summary>
        [CommandOption("--source <NAME>")]
        [Description("The source that your records name; checked against the key.")]
        public string Source { get; init; } = "";

        /// <summary>Print JSON.</summary>
        [CommandOption("--json")]
        [Description("Print the checks as one JSON document.")]
        public bool Json { get; init; }

        /// <inheritdoc/>
        public override ValidationResult Validate() => IsAddress(Address)
            ? ValidationResult.Success()
            : ValidationResult.Error($"ADDRESS: must be an address such as https://trends.example:5081; got \"{Address}\"");
    }

    /// <summary>One check, for programs.</summary>
    private sealed record CheckValues(string Check, string Verdict, string Found, string Advice);

    /// <summary>Tests; results go to <paramref name="output"/>, what is wrong with the usage to <paramref name="error"/>.</summary>
    public static async Task<int> RunAsync(Settings settings, TextWriter output, TextWriter error)
    {
        var checks = new List<Check>();
        var console = Terminal.On(output);
        try
        {
            await foreach (var check in ChecksAsync(settings))
            {
                checks.Add(check);
                if (!settings.Json)
                    Print(console, check);
            }
        }
        catch (Exception refusal) when (refusal is ArgumentException or IOException or UnauthorizedAccessException)
        {
            await error.WriteLineAsync(refusal.Message);
            return ExitCode.BadInput;
        }

        var code = CodeOf(checks);
        if (settings.Json)
        {
            await output.WriteLineAsync(Analysis.JsonOutput.Write(new
            {
                settings.Address,
                Checks = checks.Select(c => new CheckValues(c.Name, c.Verdict.ToString().ToLowerInvariant(), c.Found, c.Advice)),
            }));
        }
        else
        {
            console.WriteLine(code == ExitCode.Done ? "Records can be sent." : "Records cannot be sent yet.");
        }

        return code;
    }

    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken) =>
        RunAsync(settings, Console.Out, Console.Error);

    private static async IAsyncEnumerable<Check> ChecksAsync(Settings settings)
    {
        var address = new Uri(settings.Address);
        var key = settings.ReadKey();
        using var channel = FleetTrendChannel.Open(new ConnectionOptions
        {
            Address = address,
            Key = key,
            RootCertificateFile = settings.RootCertificate,
            AllowKeyWithoutTls = settings.PlainText,
        });
        var reached = true;
        await foreach (var check in WireChecks.RunAsync(address, settings.RootCertificate))
        {
            reached &= check.Verdict != Verdict.Failed;
            yield return check;
        }

        if (!reached)
            yield break;
        await foreach (var check in new CallChecks(channel, key is not null, TimeProvider.System).RunAsync(settings.Source))
            yield return check;
    }

    private static void Print(IAnsiConsole console, Check check)
    {
        var (sign, colour) = check.Verdict switch
        {
            Verdict.Passed => ("ok", "green"),
            Verdict.Warned => ("look", "yellow"),
            _ => ("FAILED", "red"),
        };
        console.MarkupLineInterpolated($"[{colour}]{sign,-6}[/] {check.Name,-10} {check.Found}");
        if (check.Advice.Length > 0)
            console.MarkupLineInterpolated($"                  {check.Advice}");
    }

    private static int CodeOf(List<Check> checks) => checks.FirstOrDefault(c => c.Verdict == Verdict.Failed)?.Name switch
    {
        null => ExitCode.Done,
        "name" or "connection" or "TLS" or "gRPC" => ExitCode.NotReached,
        "key" or "scope" or "source" => ExitCode.NotAllowed,
        _ => ExitCode.Failed,
    };
}
