using System.ComponentModel;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>What the three analyses take.</summary>
internal sealed class AnalyzeSettings : CommandSettings
{
    /// <summary>The file.</summary>
    [CommandArgument(0, "<FILE>")]
    [Description("Comma-separated file with a header line; see the command's description for its columns.")]
    public string File { get; init; } = "";

    /// <summary>Print JSON.</summary>
    [CommandOption("--json")]
    [Description("Print the result as one JSON document instead of tables.")]
    public bool Json { get; init; }

    /// <summary>Plot file.</summary>
    [CommandOption("--plot <FILE>")]
    [Description("Also write a plot to this file (.svg).")]
    public string? Plot { get; init; }

    /// <summary>Confidence of intervals.</summary>
    [CommandOption("--confidence <SHARE>")]
    [Description("Confidence of intervals, above 0 and below 1.")]
    [DefaultValue(0.95)]
    public double Confidence { get; init; } = 0.95;

    /// <summary>The first rule that an option breaks; null when all are in order.</summary>
    public string? Problem() =>
        !(Confidence is > 0 and < 1) ? $"--confidence: must be between 0 and 1, such as 0.95; got {Confidence}"
        : Plot is not null && !Plot.EndsWith(".svg", StringComparison.OrdinalIgnoreCase) ? $"--plot: must be a file that ends in .svg; got \"{Plot}\""
        : null;
}
