using FleetTrend.Cli.Analysis;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>fleettrend analyze recurrence FILE.</summary>
internal sealed class AnalyzeRecurrenceCommand : Command<AnalyzeSettings>
{
    /// <summary>Reads, analyses and prints.</summary>
    public static int Run(AnalyzeSettings settings, TextWriter output, TextWriter error)
    {
        var (table, units) = RecurrenceFile.Read(settings.File);
        return AnalyzeRun.Print(table, () => RecurrenceResult.Estimate(units, settings.Confidence), settings, output, error);
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, AnalyzeSettings settings, CancellationToken cancellationToken) =>
        Run(settings, Console.Out, Console.Error);
}
