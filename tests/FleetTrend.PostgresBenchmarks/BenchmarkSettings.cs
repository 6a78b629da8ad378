using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;

namespace FleetTrend.PostgresBenchmarks;

/// <summary>What is measured, and at what size.</summary>
internal sealed class BenchmarkSettings : CommandSettings
{
    private const int LeastStored = 100;

    [CommandArgument(0, "<PART>")]
    [Description("Parts to run, in order: intake, refresh, history, workers, memory, pages.")]
    public string[] Parts { get; init; } = [];

    [CommandOption("--aircraft <COUNT>")]
    [Description("Aircraft of the synthetic fleet.")]
    [DefaultValue(1_000)]
    public int Aircraft { get; init; }

    [CommandOption("--years <COUNT>")]
    [Description("Years of its records.")]
    [DefaultValue(10)]
    public int Years { get; init; }

    [CommandOption("--groups <COUNT>")]
    [Description("Type groups of the fleet. Without it: 10, and the part refresh runs with 10 and with 1.")]
    public int? Groups { get; init; }

    [CommandOption("--seed <SEED>")]
    [Description("Seed of all randomness.")]
    [DefaultValue(1)]
    public int Seed { get; init; }

    [CommandOption("--rounds <COUNT>")]
    [Description("Measurements of each figure, of which the median is printed.")]
    [DefaultValue(3)]
    public int Rounds { get; init; }

    [CommandOption("--seconds <COUNT>")]
    [Description("pages: how long each page is read.")]
    [DefaultValue(15)]
    public int Seconds { get; init; }

    [CommandOption("--most-stored <COUNT>")]
    [Description("intake: findings stored at the end of the growth.")]
    [DefaultValue(5_000_000L)]
    public long MostStored { get; init; }

    [CommandOption("--database <CONNECTION>")]
    [Description("Npgsql connection string of a server on which databases may be made. Without it: a local one.")]
    public string? Database { get; init; }

    [CommandOption("--folder <FOLDER>")]
    [Description("Where a folder is made, and deleted at the end. Without it: among the temporary files.")]
    public string? Folder { get; init; }

    [CommandOption("--strict")]
    [Description("Ends with 1 when a floor is missed.")]
    public bool Strict { get; init; }

    public override ValidationResult Validate()
    {
        if (Parts.FirstOrDefault(p => !BenchmarkCommand.Parts.ContainsKey(p)) is { } unknown)
            return ValidationResult.Error($"PART: must be {string.Join(", ", BenchmarkCommand.Parts.Keys)}; got {unknown}");
        if (MostStored < LeastStored)
            return ValidationResult.Error($"--most-stored: must be {LeastStored} or more; got {MostStored}");
        return Aircraft < 1 || Years < 1 || Groups < 1 || Rounds < 1 || Seconds < 1
            ? ValidationResult.Error("--aircraft, --years, --groups, --rounds and --seconds: each must be 1 or more")
            : ValidationResult.Success();
    }
}
