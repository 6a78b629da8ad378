using ScottPlot;
using Spectre.Console.Rendering;

namespace FleetTrend.Cli.Analysis;

/// <summary>What an analysis gives: tables for people, a plot on request, itself as JSON for programs.</summary>
internal interface IAnalysisResult
{
    /// <summary>Tables and lines in reading order.</summary>
    IEnumerable<IRenderable> Tables();

    /// <summary>The plot.</summary>
    Plot Draw();

    /// <summary>The result as one JSON document.</summary>
    string Json();
}
