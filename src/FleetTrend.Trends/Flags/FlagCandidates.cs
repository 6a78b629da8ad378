using FleetTrend.Trends.Changes;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Restarts;

namespace FleetTrend.Trends.Flags;

/// <summary>
/// What of a type group may be flagged, counted after the restarts of closed flags. Rates, levels and lives show the whole past; what was closed
/// is settled for the flags alone.
/// </summary>
public sealed record FlagCandidates
{
    /// <summary>Aircraft and bases that get worse now, with a call that stands.</summary>
    public required IReadOnlyList<Change> Changes { get; init; }

    /// <summary>Bases whose parts fail earlier or sooner, strong enough each by itself.</summary>
    public required IReadOnlyList<PartLifeTrend> PartLives { get; init; }

    /// <summary>All tests of bases.</summary>
    public required TestCounts BaseTests { get; init; }

    /// <summary>Finds them. A q-value is never below its p-value, so that what is left out here could not be flagged.</summary>
    /// <param name="inputs">The type group.</param>
    public static FlagCandidates Find(TypeGroupInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var restarts = FlagRestarts.At(inputs);
        var lives = restarts.Any ? [.. PartLifeAnalysis.Fit(inputs, restarts.Counts)] : inputs.PartLives;
        return new FlagCandidates
        {
            Changes = [.. inputs.Changes.Where(c => c.Tier is not null)],
            PartLives = [.. lives.Where(t => BaseContrasts.Tests(t.Contrast).Any(test => test.PValue <= inputs.Parameters.FalseDiscoveryRate))],
            BaseTests = TestCounts.Count(lives.SelectMany(t => BaseContrasts.Tests(t.Contrast)).Select(t => t.PValue)),
        };
    }
}
