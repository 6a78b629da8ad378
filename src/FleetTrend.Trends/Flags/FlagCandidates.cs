using FleetTrend.Records.Flags;
using FleetTrend.Trends.LocationStandings;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Repeats;
using FleetTrend.Trends.Restarts;
using FleetTrend.Trends.Standings;

namespace FleetTrend.Trends.Flags;

/// <summary>
/// What of a type group may be flagged once all tests of the fleet are known, counted after the restarts of closed flags, and the tests
/// behind it. Standings, rates and lives show the whole past; what was closed is settled for the flags alone.
/// </summary>
public sealed record FlagCandidates
{
    /// <summary>Aircraft that are in the group now and fly.</summary>
    public required IReadOnlyList<string> Flying { get; init; }

    /// <summary>Aircraft with more of a condition than their like, strong enough each by itself.</summary>
    public required IReadOnlyList<AirframeStanding> Airframes { get; init; }

    /// <summary>Places where a condition came back, strong enough each by itself.</summary>
    public required IReadOnlyList<LocationStanding> Locations { get; init; }

    /// <summary>What came back at places of the aircraft named above.</summary>
    public required IReadOnlyList<RepeatLocation> Repeats { get; init; }

    /// <summary>Bases whose parts fail earlier or sooner, strong enough each by itself.</summary>
    public required IReadOnlyList<PartLifeTrend> PartLives { get; init; }

    /// <summary>All tests of aircraft.</summary>
    public required TestCounts AirframeTests { get; init; }

    /// <summary>All tests of places.</summary>
    public required TestCounts LocationTests { get; init; }

    /// <summary>All tests of bases.</summary>
    public required TestCounts BaseTests { get; init; }

    /// <summary>Finds them. A q-value is never below its p-value, so that what is left out here could not be flagged.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="closings">The newest closing of each flag.</param>
    public static FlagCandidates Find(TypeGroupInputs inputs, IReadOnlyList<FlagClosing> closings)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        var restarts = FlagRestarts.At(closings, inputs.TypeGroup, inputs.Aircraft);
        var level = inputs.Parameters.FalseDiscoveryRate;
        var airframes = restarts.Any ? [.. StandingAnalysis.Compare(inputs, restarts)] : inputs.Standings;
        var locations = restarts.Any ? LocationStandings.LocationTests.Test(inputs, restarts) : inputs.LocationTests;
        var lives = restarts.Any ? [.. PartLifeAnalysis.Fit(inputs, restarts.Counts)] : inputs.PartLives;
        List<AirframeStanding> drifts = [.. airframes.Where(s => s.PValue.Value <= level && s.Observed > s.Expected)];
        List<LocationStanding> repeats = [.. locations.SeenAgain.Where(s => s.PValue.Value <= level && s.Observed > s.Expected.Value)];
        var named = drifts.Select(d => d.Registration).Concat(repeats.Select(r => r.Registration)).ToHashSet(StringComparer.Ordinal);
        return new FlagCandidates
        {
            Flying = [.. inputs.Present.Where(a => a.RetiredDate is null).Select(a => a.Registration)],
            Airframes = drifts,
            Locations = repeats,
            Repeats =
            [
                .. inputs.Repeats.Where(r => named.Contains(r.Registration)).Select(r => RepeatAnalysis.After(r, restarts)).OfType<RepeatLocation>(),
            ],
            PartLives = [.. lives.Where(t => BaseContrasts.Tests(t.Contrast).Any(test => test.PValue <= level))],
            AirframeTests = TestCounts.Count(airframes.Select(s => s.PValue.Value)),
            LocationTests = TestCounts.Count(locations.Tests),
            BaseTests = TestCounts.Count(lives.SelectMany(t => BaseContrasts.Tests(t.Contrast)).Select(t => t.PValue)),
        };
    }
}
