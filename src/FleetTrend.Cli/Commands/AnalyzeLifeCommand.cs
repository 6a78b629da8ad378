using FleetTrend.Cli.Analysis;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>fleettrend analyze life FILE.</summary>
internal sealed class AnalyzeLifeCommand : Command<AnalyzeSettings>
{
    /// <summary>Reads, analyses and prints.</summary>
    public static int Run(AnalyzeSettings settings, TextWriter output, TextWriter error)
    {
        var (table, lives) = LifeFile.Read(settings.File);
        return AnalyzeRun.Print(table, () => LifeResult.Estimate(lives, settings.Confidence), settings, output, error);
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, AnalyzeSettings settings, CancellationToken cancellationToken) =>
        Run(settings, Console.Out, Console.Error);
}
