using FleetTrend.Cli.Analysis;
using FleetTrend.Cli.Csv;
using Spectre.Console;

namespace FleetTrend.Cli.Commands;

/// <summary>What all analyses do after their file is read: refuse bad input whole, or print the result.</summary>
internal static class AnalyzeRun
{
    private const int PrintedProblems = 20;
    private const int PlotWidth = 900;
    private const int PlotHeight = 600;

    /// <summary>Prints the result to <paramref name="output"/>, or what is wrong to <paramref name="error"/> and nothing else.</summary>
    public static int Print(CsvTable table, Func<IAnalysisResult> analyze, AnalyzeSettings settings, TextWriter output, TextWriter error)
    {
        if (settings.Problem() is { } option)
        {
            error.WriteLine(option);
            return ExitCode.BadInput;
        }
        if (table.Problems.Count > 0)
        {
            foreach (var problem in table.Problems.OrderBy(p => p.Line).Take(PrintedProblems))
                error.WriteLine(problem);
            if (table.Problems.Count > PrintedProblems)
                error.WriteLine($"and {table.Problems.Count - PrintedProblems} more");
            return ExitCode.BadInput;
        }

        var result = analyze();
        if (settings.Plot is not null && !HasWritten(result, settings.Plot, error))
            return ExitCode.Failed;
        if (settings.Json)
        {
            output.WriteLine(result.Json());
            return ExitCode.Done;
        }
        var console = Terminal.On(output);
        foreach (var part in result.Tables())
        {
            console.Write(part);
            console.WriteLine();
        }
        return ExitCode.Done;
    }

    private static bool HasWritten(IAnalysisResult result, string path, TextWriter error)
    {
        try
        {
            System.IO.File.WriteAllText(path, result.Draw().GetSvgXml(PlotWidth, PlotHeight));
            return true;
        }
        catch (Exception unwritable) when (unwritable is IOException or UnauthorizedAccessException)
        {
            error.WriteLine($"{path}: the plot could not be written: {unwritable.Message}");
            return false;
        }
    }
}
