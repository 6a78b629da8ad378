using System.Diagnostics;
using System.Globalization;

namespace FleetTrend.Benchmarks;

/// <summary>Runs R in a process of its own.</summary>
internal static class Reference
{
    private static string Scripts => Path.Combine(AppContext.BaseDirectory, "r");

    /// <summary>Makes the files that are not there yet.</summary>
    public static async Task MakeFilesAsync(string folder, IEnumerable<int> rows)
    {
        string[] missing = [.. rows.Distinct().Where(n => !File.Exists(Path.Combine(folder, $"recurrences_{n}.csv"))).Select(n => $"{n}")];
        if (missing.Length > 0) await RunAsync(["generate.R", folder, .. missing]);
    }

    /// <summary>Seconds that R took for a task, and its values.</summary>
    public static async Task<(double Seconds, double[] Values)> TimeAsync(string task, string file)
    {
        var line = (await RunAsync(["time.R", task, file])).Split('\n').Single(l => l.StartsWith("RESULT,", StringComparison.Ordinal));
        var parts = line.Split(',');
        var values = parts[2].Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray();
        return (double.Parse(parts[1], CultureInfo.InvariantCulture), values);
    }

    private static async Task<string> RunAsync(string[] arguments)
    {
        var start = new ProcessStartInfo("Rscript") { WorkingDirectory = Scripts, RedirectStandardOutput = true, UseShellExecute = false };
        start.ArgumentList.Add("--vanilla");
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        using var process = Process.Start(start) ?? throw new InvalidOperationException("Rscript did not start.");
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0
            ? output
            : throw new InvalidOperationException($"Rscript {string.Join(' ', arguments)} ended with {process.ExitCode}.");
    }
}
