using System.Diagnostics;

namespace FleetTrend.Cli.Tests;

/// <summary>The program itself: what makes no sense ends with 2, a sentence on the error stream, and nothing as a result.</summary>
public sealed class UsageTests
{
    [Theory]
    [InlineData("FILE", "analyze", "life")]
    [InlineData("'bad'", "analyze", "life", "rows.csv", "--bad")]
    [InlineData("'nosuch'", "nosuch")]
    [InlineData("a whole number", "demo", "--seed", "x")]
    [InlineData("a number", "analyze", "life", "rows.csv", "--confidence", "x")]
    [InlineData("FOLDER", "import")]
    [InlineData("--server: must be an address", "import", "folder", "--server", "nowhere")]
    [InlineData("--as-of: must be a time", "export", "folder", "--as-of", "monday")]
    [InlineData("--since: must be a date such as 2026-02-03; got \"monday\"", "backtest", "--since", "monday")]
    [InlineData("--until: must be a date", "backtest", "--until", "2026-02-30")]
    [InlineData("--until: must not be before --since, 2026-02-03; got \"2026-02-02\"", "backtest", "--since", "2026-02-03", "--until", "2026-02-02")]
    [InlineData("--plot: must be a file that ends in .svg", "backtest", "--plot", "calls.png")]
    [InlineData("must be a folder that exists", "import", "/no/such/folder")]
    public async Task Usage_that_makes_no_sense_ends_with_2(string word, params string[] arguments)
    {
        var (code, output, error) = await RunAsync(arguments);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(word, error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal); // no stack trace
    }

    [Fact]
    public async Task A_branch_alone_prints_its_help_and_ends_with_2() => Assert.Equal(2, (await RunAsync("analyze")).Code);

    [Theory]
    [InlineData("--help")]
    [InlineData("import", "--help")]
    public async Task Help_ends_with_0(params string[] arguments)
    {
        var (code, output, error) = await RunAsync(arguments);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("USAGE", output, StringComparison.Ordinal);
    }

    [Theory] // A shell parts words at blanks: a name of two words in an example was two arguments too many.
    [InlineData("keys", "create")]
    [InlineData("keys", "revoke")]
    [InlineData("import")]
    [InlineData("export")]
    [InlineData("backtest")]
    [InlineData("send-test")]
    [InlineData("analyze", "life")]
    [InlineData("analyze", "recurrence")]
    [InlineData("analyze", "rate")]
    public async Task Each_example_of_the_help_is_a_command_that_is_understood(params string[] command)
    {
        var help = (await RunAsync([.. command, "--help"])).Output;
        var after = help[(help.IndexOf("EXAMPLES:", StringComparison.Ordinal) + "EXAMPLES:".Length)..];
        var examples = after[..after.IndexOf("\n\n", StringComparison.Ordinal)].Split("fleettrend ", StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        Assert.NotEmpty(examples);
        foreach (var example in examples)
        {
            // An unknown option at its end keeps the command from running: all that comes before it was understood.
            var (code, _, error) = await RunAsync([.. example.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries), "--no-such-option"]);
            Assert.Equal(2, code);
            Assert.Contains("'no-such-option'", error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_server_that_is_not_there_ends_with_3()
    {
        var folder = Directory.CreateTempSubdirectory("nobody");
        try
        {
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "type_groups.csv"), "name,title,layout\na-b,A,c\n");
            var (code, _, error) = await RunAsync("import", folder.FullName, "--server", "http://127.0.0.1:1");
            Assert.Equal(3, code);
            Assert.Contains("Unavailable", error, StringComparison.Ordinal);
            Assert.Contains("send-test", error, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<(int Code, string Output, string Error)> RunAsync(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(Commands.CommandLine).Assembly.Location, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output, await error);
    }
}
