using FleetTrend.Cli.Analysis;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>fleettrend analyze growth FILE.</summary>
internal sealed class AnalyzeGrowthCommand : Command<AnalyzeSettings>
{
    /// <summary>Reads, analyses and prints.</summary>
    public static int Run(AnalyzeSettings settings, TextWriter output, TextWriter error)
    {
        var (table, units) = GrowthFile.Read(settings.File);
        return AnalyzeRun.Print(table, () => GrowthResult.Estimate(units, settings.Confidence), settings, output, error);
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, AnalyzeSettings settings, CancellationToken cancellationToken) =>
        Run(settings, Console.Out, Console.Error);
}
