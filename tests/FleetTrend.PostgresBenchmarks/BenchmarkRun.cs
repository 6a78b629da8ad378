using FleetTrend.PostgresBenchmarks.Fleets;
using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.Synthetic;

namespace FleetTrend.PostgresBenchmarks;

/// <summary>What every part works with.</summary>
/// <param name="Settings">What was asked for.</param>
/// <param name="Server">The server.</param>
/// <param name="Fleets">Databases with a fleet in them.</param>
/// <param name="Folder">For files of the programs that are started.</param>
/// <param name="Figures">Where figures go.</param>
internal sealed record BenchmarkRun(
    BenchmarkSettings Settings, BenchmarkServer Server, FilledFleets Fleets, string Folder, Figures Figures)
{
    private const int UsualGroups = 10;

    /// <summary>The fleet that was asked for.</summary>
    public OperatorSize Size => new(Settings.Aircraft, Settings.Years, Settings.Groups ?? UsualGroups);
}
