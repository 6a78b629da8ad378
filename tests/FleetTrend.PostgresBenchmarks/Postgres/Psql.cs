using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Npgsql;

namespace FleetTrend.PostgresBenchmarks.Postgres;

/// <summary>PostgreSQL's own client: the yardstick.</summary>
internal static partial class Psql
{
    /// <summary>Seconds that the statements of a script take, without the start of psql.</summary>
    /// <exception cref="InvalidOperationException">A statement fails.</exception>
    public static async Task<double> TimeAsync(string connectionString, string script)
    {
        var target = new NpgsqlConnectionStringBuilder(connectionString);
        var start = new ProcessStartInfo(
            "psql",
            [
                "-q", "-v", "ON_ERROR_STOP=1", "-f", "-",
                "-h", target.Host!, "-p", $"{target.Port}", "-U", target.Username!, "-d", target.Database!,
            ])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            Environment = { ["PGPASSWORD"] = target.Password, ["LC_ALL"] = "C" },
        };
        using var psql = Process.Start(start)!;
        var printed = psql.StandardOutput.ReadToEndAsync();
        await psql.StandardInput.WriteAsync($"\\timing on\n{script}\n");
        psql.StandardInput.Close();
        await psql.WaitForExitAsync();
        if (psql.ExitCode != 0)
            throw new InvalidOperationException($"psql ended with {psql.ExitCode}.");
        var milliseconds = Timing().Matches(await printed).Select(m => m.Groups["ms"].Value);
        return milliseconds.Sum(ms => double.Parse(ms, CultureInfo.InvariantCulture)) / 1_000;
    }

    [GeneratedRegex(
        @"^Time: (?<ms>[0-9.]+) ms", RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Timing();
}
