using System.ComponentModel;
using System.Globalization;
using Spectre.Console;
using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>What a back-test takes.</summary>
internal sealed class BackTestSettings : CommandSettings
{
    /// <summary>Only one type group.</summary>
    [CommandOption("--type-group <NAME>")]
    [Description("Only this type group; default: each of them.")]
    public string? TypeGroup { get; init; }

    /// <summary>First day.</summary>
    [CommandOption("--since <DATE>")]
    [Description("Count calls from this day on, such as 2025-01-01; what came before is replayed all the same. Default: from the first look.")]
    public string? Since { get; init; }

    /// <summary>Last day.</summary>
    [CommandOption("--until <DATE>")]
    [Description("Count calls up to this day; default: today.")]
    public string? Until { get; init; }

    /// <summary>CSV file.</summary>
    [CommandOption("--csv <FILE>")]
    [Description("Also write every call of every method to this file, the alert levels' too.")]
    public string? Csv { get; init; }

    /// <summary>Plot file.</summary>
    [CommandOption("--plot <FILE>")]
    [Description("Also write a plot to this file (.svg); of one type group.")]
    public string? Plot { get; init; }

    /// <summary>Print JSON.</summary>
    [CommandOption("--json")]
    [Description("Print one JSON document, with every call of every method, instead of tables.")]
    public bool Json { get; init; }

    /// <summary>The first day; null for all.</summary>
    public DateOnly? SinceDate => Day(Since);

    /// <summary>The last day; null for today.</summary>
    public DateOnly? UntilDate => Day(Until);

    /// <inheritdoc/>
    public override ValidationResult Validate() => Problem() is { } problem ? ValidationResult.Error(problem) : ValidationResult.Success();

    /// <summary>The first rule that an option breaks; null when all are in order.</summary>
    public string? Problem() =>
        Since is not null && SinceDate is null ? $"--since: must be a date such as 2026-02-03; got \"{Since}\""
        : Until is not null && UntilDate is null ? $"--until: must be a date such as 2026-02-03; got \"{Until}\""
        : SinceDate > UntilDate ? $"--until: must not be before --since, {Since}; got \"{Until}\""
        : Plot is not null && !Plot.EndsWith(".svg", StringComparison.OrdinalIgnoreCase) ? $"--plot: must be a file that ends in .svg; got \"{Plot}\""
        : null;

    private static DateOnly? Day(string? text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}
