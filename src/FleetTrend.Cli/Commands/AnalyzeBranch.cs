using Spectre.Console.Cli;

namespace FleetTrend.Cli.Commands;

/// <summary>fleettrend analyze life|recurrence|rate|growth.</summary>
internal static class AnalyzeBranch
{
    /// <summary>Adds the analyses.</summary>
    public static void Add(IConfigurator config) => config.AddBranch("analyze", analyze =>
    {
        analyze.SetDescription("Reliability statistics of a comma-separated file, without database or service.");
        analyze.AddCommand<AnalyzeLifeCommand>("life")
            .WithDescription("Columns lower,upper,entry,count: failure after lower, up to upper; empty upper: good at lower; equal: exact age; entry and count may be left out.")
            .WithExample("analyze", "life", "gaskets.csv", "--plot", "gaskets.svg");
        analyze.AddCommand<AnalyzeRecurrenceCommand>("recurrence")
            .WithDescription("Columns unit,time,what with what = start, event or end; a unit without a start was watched from 0.")
            .WithExample("analyze", "recurrence", "cracks.csv");
        analyze.AddCommand<AnalyzeRateCommand>("rate")
            .WithDescription("Columns unit,events,exposure: every unit against the others.")
            .WithExample("analyze", "rate", "tails.csv", "--json");
        analyze.AddCommand<AnalyzeGrowthCommand>("growth")
            .WithDescription("Columns unit,start,stop,exposure,events: spans in which events are known to lie, such as between looks; is it getting worse or better.")
            .WithExample("analyze", "growth", "welds.csv");
    });
}
