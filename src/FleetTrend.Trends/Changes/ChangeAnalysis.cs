using FleetTrend.Statistics.Changes;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.Changes;

/// <summary>Which aircraft and bases of a type group get worse now, since when and where. Levels that always were so are no change.</summary>
/// <remarks>
/// The limits are the type group's own, for all classes of its aircraft together, so that the stated rate per aircraft-year holds for the fleet,
/// however many type groups it has. Nine tenths of the calls allowed go to aircraft, one tenth to bases.
/// </remarks>
public sealed class ChangeAnalysis : Analysis<Change>
{
    /// <summary>New false flags per 50 aircraft-years, all classes together.</summary>
    public const double FlagsPer50AircraftYears = 1;

    /// <summary>New false watches per 50 aircraft-years, all classes together.</summary>
    public const double WatchesPer50AircraftYears = 5;

    private const double ShareOfBases = 0.1;
    private const double SimulatedYears = 5_000;

    // Bases have findings in every period: so many years as give some fifty false flags tell the limit, and more would cost more than all aircraft.
    private const double FlagsOfBases = 50;
    private const double FewestBaseYears = 100;
    private const double MostBaseYears = 1_000;
    private const int Seed = 20261127;

    private static readonly ChangePrior Prior = new();

    /// <summary>Makes the analysis.</summary>
    public ChangeAnalysis()
        : base("changes")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(Change item) => new(Registration: item.Registration, Base: item.Base);

    /// <inheritdoc/>
    public override Headline HeadlineOf(Change item) =>
        new(item.Condition?.ToString() ?? item.Kind ?? "", item.LogScore, null, null, item.FoundSince);

    /// <summary>Strongest first; the same order for the same changes.</summary>
    public override IEnumerable<Change> Order(IEnumerable<Change> items) => items
        .OrderByDescending(c => c.Strength).ThenByDescending(c => c.LogScore)
        .ThenBy(c => c.TypeGroup, StringComparer.Ordinal)
        .ThenBy(c => c.Registration, StringComparer.Ordinal)
        .ThenBy(c => c.Base, StringComparer.Ordinal)
        .ThenBy(c => c.Condition).ThenBy(c => c.Kind, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<Change> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var expectations = inputs.Expectations;
        var aircraftYears = expectations.ByAircraft.Select(p => p.Panel.UnitYears).DefaultIfEmpty(0).Max();
        var baseYears = expectations.ByBase.Select(p => p.Panel.UnitYears).DefaultIfEmpty(0).Max();
        var aircraftYearsOfABaseYear = baseYears > 0 ? aircraftYears / baseYears : 1;
        var flying = inputs.Present.Where(a => a.RetiredDate is null).Select(a => a.Registration).ToHashSet(StringComparer.Ordinal);
        var aircraft = Changes(
            inputs, expectations.ByAircraft, expectations.AircraftSpreads, SimulatedYears, 1,
            expectations.ByBase.Count > 0 ? 1 - ShareOfBases : 1, flying.Contains, isBase: false);
        var bases = Changes(
            inputs, expectations.ByBase, expectations.BaseSpreads,
            Math.Clamp(FlagsOfBases * 50 / (ShareOfBases * aircraftYearsOfABaseYear), FewestBaseYears, MostBaseYears), aircraftYearsOfABaseYear,
            ShareOfBases, _ => true, isBase: true);
        return aircraft.Concat(bases)
            .OrderBy(c => c.Registration is null).ThenBy(c => c.Registration, StringComparer.Ordinal).ThenBy(c => c.Base, StringComparer.Ordinal)
            .ThenBy(c => c.Condition).ThenBy(c => c.Kind, StringComparer.Ordinal);
    }

    /// <summary>Units with a call, or for which a change fits better than none.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="panels">One per class.</param>
    /// <param name="spreads">One per panel.</param>
    /// <param name="simulatedYears">Unit-years to simulate for the limits.</param>
    /// <param name="aircraftYearsPerYear">Aircraft-years behind a unit-year.</param>
    /// <param name="share">Share of the calls allowed.</param>
    /// <param name="isWanted">Whether a unit can still be called.</param>
    /// <param name="isBase">Whether units are bases.</param>
    private static IEnumerable<Change> Changes(
        TypeGroupInputs inputs, IReadOnlyList<ClassPanel> panels, IReadOnlyList<RateSpread> spreads, double simulatedYears,
        double aircraftYearsPerYear, double share, Func<string, bool> isWanted, bool isBase)
    {
        if (panels.Count == 0)
            yield break;
        var perUnitYear = aircraftYearsPerYear * share / 50;
        var limits = CallLimits.Simulate(
            [.. panels.Select(p => p.Panel)], spreads, Prior, [FlagsPer50AircraftYears * perUnitYear, WatchesPer50AircraftYears * perUnitYear],
            simulatedYears, Seed);
        foreach (var (panel, spread) in panels.Zip(spreads))
        {
            var watch = new ChangeWatch(panel.Panel, spread, Prior);
            for (var u = 0; u < panel.Panel.Units.Count; u++)
            {
                var unit = panel.Panel.Units[u];
                if (!isWanted(unit.Name) || watch.At(u, unit.LastPeriod) is not { } score)
                    continue;
                var (strength, called) = Standing(watch, u, limits);
                if (strength == CallStrength.None && score.Log <= 0)
                    continue;
                var atCall = called is { } p ? Math.Max(score.Log, watch.At(u, p)!.Log) : score.Log;
                var (years, isCapped) = limits.YearsPerFalseCall(atCall);
                yield return Described(inputs, panel, unit, score, spread) with
                {
                    Registration = isBase ? null : unit.Name,
                    Base = isBase ? unit.Name : inputs.BaseOf(unit.Name),
                    Strength = strength,
                    CalledDate = called is { } period ? panel.Calendar.FirstDay(period) : null,
                    FalseCallsPer50AircraftYears = strength switch
                    {
                        CallStrength.Flag => FlagsPer50AircraftYears,
                        CallStrength.Watch => WatchesPer50AircraftYears,
                        _ => null,
                    },
                    AircraftYearsPerFalseCall = years * aircraftYearsPerYear,
                    IsAircraftYearsCapped = isCapped,
                };
            }
        }
    }

    private static (CallStrength Strength, int? Called) Standing(ChangeWatch watch, int unit, CallLimits limits)
    {
        foreach (var (strength, tier) in new[] { (CallStrength.Flag, limits.Tiers[0]), (CallStrength.Watch, limits.Tiers[1]) })
        {
            if (watch.Calls(unit, tier.LogLimit, Math.Log(Prior.LowerLine)) is [.., (var from, null)])
                return (strength, from);
        }

        return (CallStrength.None, null);
    }

    private static Change Described(TypeGroupInputs inputs, ClassPanel panel, WatchedUnit unit, ChangeScore score, RateSpread spread) => new()
    {
        TypeGroup = inputs.TypeGroup,
        Base = "",
        Condition = panel.Class.Condition,
        Kind = panel.Class.Kind,
        Strength = CallStrength.None,
        LogScore = score.Log,
        SinceDate = panel.Calendar.FirstDay(score.Since),
        SinceEarliestDate = panel.Calendar.FirstDay(score.SinceEarliest),
        SinceLatestDate = panel.Calendar.FirstDay(score.SinceLatest),
        Part = score.Scope.Name,
        PartShare = score.ScopeShare,
        Locations = [.. unit.Findings
            .Where(f => f.Period >= score.Since && (score.Scope.IsWhole || score.Scope.Locations.Contains(f.Location)))
            .GroupBy(f => panel.Locations[f.Location], StringComparer.Ordinal)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.Key)],
        Ratio = score.Ratio,
        FoundBefore = score.FoundBefore,
        ExpectedBefore = score.ExpectedBefore,
        FoundSince = score.FoundSince,
        ExpectedSince = score.ExpectedSince,
        AircraftYearsPerFalseCall = 0,
        IsAircraftYearsCapped = false,
        Dispersion = spread.Dispersion,
        Variation = 1 / Math.Sqrt(spread.Shape),
    };
}
