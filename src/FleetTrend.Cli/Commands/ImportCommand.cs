using System.ComponentModel;
using FleetTrend.Cli.Csv;
using FleetTrend.Cli.Import;
using FleetTrend.Cli.RecordFiles;
using FleetTrend.Client;
using Grpc.Net.Client;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>fleettrend import FOLDER.</summary>
internal sealed class ImportCommand : AsyncCommand<ImportCommand.Settings>
{
    private const int PrintedProblems = 20;

    /// <summary>Options of an import.</summary>
    internal sealed class Settings : ServerSettings
    {
        /// <summary>The folder.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("Folder with the CSV files; protos/CSV.md describes them.")]
        public string Folder { get; init; } = "";

        /// <summary>Source of rows that name none.</summary>
        [CommandOption("--source <NAME>")]
        [Description("Source of rows that name none in a column of their own; default: the source of the key.")]
        public string Source { get; init; } = "";

        /// <summary>Where refused rows go.</summary>
        [CommandOption("--rejects <FOLDER>")]
        [Description("Folder for the refused rows; default: rejects, in the folder itself.")]
        public string? Rejects { get; init; }

        /// <summary>Check only.</summary>
        [CommandOption("--validate-only")]
        [Description("Have the server check everything and store nothing.")]
        public bool ValidateOnly { get; init; }

        /// <summary>Hold instead of refuse.</summary>
        [CommandOption("--hold")]
        [Description("Have records of an aircraft, or of a location of it, that is not registered held until it is.")]
        public bool Hold { get; init; }

        /// <summary>Print JSON.</summary>
        [CommandOption("--json")]
        [Description("Print the summary as one JSON document.")]
        public bool Json { get; init; }

        /// <summary>Where refused rows go, default or not.</summary>
        public string RejectsFolder => Rejects ?? Path.Combine(Folder, "rejects");
    }

    /// <summary>Imports; results go to <paramref name="output"/>, what is wrong to <paramref name="error"/>.</summary>
    public static async Task<int> RunAsync(Settings settings, TextWriter output, TextWriter error, CancellationToken ct)
    {
        if (Rejects.IsTaken(settings.RejectsFolder))
        {
            await error.WriteLineAsync($"{settings.RejectsFolder}: holds files of an earlier import. Import them from there, move them away, or name another folder with --rejects.");
            return ExitCode.BadInput;
        }

        var folder = RecordFolder.Open(settings.Folder);
        folder.Source = settings.Source;
        if (folder.Problems.Count > 0)
        {
            Print(folder.Problems, error);
            return ExitCode.BadInput;
        }

        return await ServerRun.RunAsync(settings, error, channel => ImportAsync(settings, folder, channel, output, error, ct));
    }

    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken) =>
        RunAsync(settings, Console.Out, Console.Error, cancellationToken);

    private static void Print(IReadOnlyList<CsvProblem> problems, TextWriter error)
    {
        foreach (var problem in problems.Take(PrintedProblems))
            error.WriteLine(problem);
        if (problems.Count > PrintedProblems)
            error.WriteLine($"and {problems.Count - PrintedProblems} more");
        error.WriteLine("Nothing was sent.");
    }

    private static async Task<int> ImportAsync(
        Settings settings, RecordFolder folder, GrpcChannel channel, TextWriter output, TextWriter error, CancellationToken ct)
    {
        using var rejects = new Rejects(settings.RejectsFolder);
        var progress = new ImportProgress(settings.Json, error);
        var options = new PushOptions { ValidateOnly = settings.ValidateOnly, HoldUnregistered = settings.Hold, Interruptions = progress };
        var run = new ImportRun(folder, channel, options, rejects);
        try
        {
            await progress.ShowAsync(run.Counts.Values.Sum(c => c.Rows), () => run.RunAsync(progress, ct));
        }
        catch
        {
            rejects.Discard();
            await error.WriteLineAsync($"Stopped after {run.Done} of {run.Counts.Values.Sum(c => c.Rows)}. Run the same again: what was stored answers unchanged.");
            throw;
        }

        rejects.Complete();
        var summary = ImportSummary.Build(settings.Folder, settings.ValidateOnly, run, rejects);
        if (settings.Json)
            await output.WriteLineAsync(Analysis.JsonOutput.Write(summary));
        else
            summary.Print(Terminal.On(output));
        return rejects.Any ? ExitCode.Failed : ExitCode.Done;
    }
}
