using System.ComponentModel;
using System.Globalization;
using FleetTrend.Cli.Export;
using FleetTrend.Cli.RecordFiles;
using Google.Protobuf.WellKnownTypes;
using Grpc.Net.Client;
using Spectre.Console;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>fleettrend export FOLDER.</summary>
internal sealed class ExportCommand : AsyncCommand<ExportCommand.Settings>
{
    /// <summary>Options of an export.</summary>
    internal sealed class Settings : ServerSettings
    {
        /// <summary>The folder.</summary>
        [CommandArgument(0, "<FOLDER>")]
        [Description("Folder for the CSV files; must be empty, or is made.")]
        public string Folder { get; init; } = "";

        /// <summary>Only one source.</summary>
        [CommandOption("--source <NAME>")]
        [Description("Only records of this source; default: all that the key may see.")]
        public string Source { get; init; } = "";

        /// <summary>The moment of knowledge.</summary>
        [CommandOption("--as-of <TIME>")]
        [Description("What was known at this moment, such as 2026-03-01T00:00:00Z; default: now.")]
        public string? AsOf { get; init; }

        /// <summary>Print JSON.</summary>
        [CommandOption("--json")]
        [Description("Print the summary as one JSON document.")]
        public bool Json { get; init; }

        /// <summary>The moment as the contract writes it; null for now.</summary>
        public Timestamp? AsOfTime => AsOf is null ? null : Parse(AsOf) is { } time ? Timestamp.FromDateTimeOffset(time) : null;

        /// <inheritdoc/>
        public override ValidationResult Validate() => AsOf is not null && Parse(AsOf) is null
            ? ValidationResult.Error($"--as-of: must be a time such as 2026-03-01T00:00:00Z; got \"{AsOf}\"")
            : base.Validate();

        private static DateTimeOffset? Parse(string text) =>
            DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var time) ? time : null;
    }

    /// <summary>Rows of one file.</summary>
    private sealed record FileRows(string File, int Rows);

    /// <summary>Exports; results go to <paramref name="output"/>, what is wrong to <paramref name="error"/>.</summary>
    public static async Task<int> RunAsync(Settings settings, TextWriter output, TextWriter error, CancellationToken ct)
    {
        if (Directory.Exists(settings.Folder) && Directory.EnumerateFileSystemEntries(settings.Folder).Any())
        {
            await error.WriteLineAsync($"{settings.Folder}: must be empty; an export writes over nothing.");
            return ExitCode.BadInput;
        }

        try
        {
            Directory.CreateDirectory(settings.Folder);
        }
        catch (Exception unwritable) when (unwritable is IOException or UnauthorizedAccessException)
        {
            await error.WriteLineAsync($"{settings.Folder}: must be a folder that can be written: {unwritable.Message}");
            return ExitCode.BadInput;
        }

        return await ServerRun.RunAsync(settings, error, channel => ExportAsync(settings, channel, output, ct));
    }

    /// <inheritdoc/>
    public override Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken) =>
        RunAsync(settings, Console.Out, Console.Error, cancellationToken);

    private static async Task<int> ExportAsync(Settings settings, GrpcChannel channel, TextWriter output, CancellationToken ct)
    {
        using var writer = new FolderWriter(settings.Folder);
        var run = new ExportRun(channel, writer);
        if (settings.Json || !AnsiConsole.Profile.Capabilities.Interactive)
        {
            await run.RunAsync(settings.Source, settings.AsOfTime, new Progress<int>(), ct);
        }
        else
        {
            await AnsiConsole.Status().StartAsync("Reading", status => run.RunAsync(
                settings.Source, settings.AsOfTime, new Progress<int>(n => status.Status = $"{n:N0} records"), ct));
        }

        var asOf = run.AsOfTime?.ToDateTimeOffset();
        IReadOnlyList<FileRows> files = [.. FileSet.All.Where(writer.Counts.ContainsKey).Select(f => new FileRows(f.Name, writer.Counts[f]))];
        if (settings.Json)
        {
            await output.WriteLineAsync(Analysis.JsonOutput.Write(new { settings.Folder, AsOf = asOf, Files = files }));
            return ExitCode.Done;
        }

        var console = Terminal.On(output);
        var table = new Table { Border = TableBorder.Simple }.AddColumn("file").AddColumn("rows", c => c.RightAligned());
        foreach (var file in files)
            table.AddRow(file.File, $"{file.Rows:N0}");
        console.Write(table);
        console.WriteLine($"As known at {asOf:u}. Held records and earlier revisions are not in it.");
        return ExitCode.Done;
    }
}
