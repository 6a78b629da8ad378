using FleetTrend.Records.Flags;
using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Effects;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.Changes;

/// <summary>Which aircraft and bases of a type group get worse now, since when and where. Levels that always were so are no change.</summary>
public sealed class ChangeAnalysis : Analysis<Change>
{
    private const string RatioMethod =
        "found since it began, over what the rates or lives of the others give for the same looks; limits as for a Poisson count, wider where findings "
        + "come in bunches (Garwood 1936). The days are picked because much was found, so that the ratio runs high";

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
        .OrderByDescending(c => c.Tier is null ? 0 : (int)c.Tier).ThenByDescending(c => c.LogScore)
        .ThenBy(c => c.TypeGroup, StringComparer.Ordinal)
        .ThenBy(c => c.Registration, StringComparer.Ordinal)
        .ThenBy(c => c.Base, StringComparer.Ordinal)
        .ThenBy(c => c.Condition).ThenBy(c => c.Kind, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<Change> Find(TypeGroupInputs inputs, ICollection<double> tests) => inputs.Changes;

    /// <summary>Changes of a type group, those of one aircraft or base next to each other.</summary>
    internal static IEnumerable<Change> FindChanges(TypeGroupInputs inputs)
    {
        var expectations = GroupExpectations.BuildRestarted(inputs);
        var flying = inputs.Present.Where(a => a.RetiredDate is null).Select(a => a.Registration).ToHashSet(StringComparer.Ordinal);
        var aircraft = Changes(
            inputs, expectations.ByAircraft, expectations.AircraftSpreads, () => inputs.AircraftLimits, flying.Contains, isBase: false);
        var bases = Changes(inputs, expectations.ByBase, expectations.BaseSpreads, () => inputs.BaseLimits, _ => true, isBase: true);
        return aircraft.Concat(bases)
            .OrderBy(c => c.Registration is null).ThenBy(c => c.Registration, StringComparer.Ordinal).ThenBy(c => c.Base, StringComparer.Ordinal)
            .ThenBy(c => c.Condition).ThenBy(c => c.Kind, StringComparer.Ordinal);
    }

    /// <summary>Units with a call, or for which a change fits better than none.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="panels">One per class.</param>
    /// <param name="spreads">One per panel.</param>
    /// <param name="limitsOf">Their limits; not asked for where there is no panel.</param>
    /// <param name="isWanted">Whether a unit can still be called.</param>
    /// <param name="isBase">Whether units are bases.</param>
    private static IEnumerable<Change> Changes(
        TypeGroupInputs inputs, IReadOnlyList<ClassPanel> panels, IReadOnlyList<RateSpread> spreads, Func<ChangeLimits> limitsOf,
        Func<string, bool> isWanted, bool isBase)
    {
        if (panels.Count == 0)
            yield break;
        var kinds = inputs.Observations.Locations.ToDictionary(l => l.Location, l => l.Kind.Name, StringComparer.Ordinal);
        var limits = limitsOf();
        foreach (var (panel, spread) in panels.Zip(spreads))
        {
            var watch = new ChangeWatch(panel.Panel, spread, ChangeLimits.Prior);
            for (var u = 0; u < panel.Panel.Units.Count; u++)
            {
                var unit = panel.Panel.Units[u];
                if (!isWanted(unit.Name) || watch.At(u, unit.LastPeriod) is not { } score)
                    continue;
                var (tier, called) = Standing(watch, u, score.Log, limits);
                if (tier is null && score.Log <= 0)
                    continue;
                var atCall = called is { } p ? Math.Max(score.Log, watch.At(u, p)!.Log) : score.Log;
                var (years, isCapped) = limits.AircraftYearsPerFalseCall(atCall);
                yield return Described(inputs, panel, unit, score, spread, kinds) with
                {
                    Registration = isBase ? null : unit.Name,
                    Base = isBase ? unit.Name : inputs.BaseOf(unit.Name),
                    Tier = tier,
                    CalledDate = called is { } period ? panel.Calendar.FirstDay(period) : null,
                    FalseCallsPer50AircraftYears = tier switch
                    {
                        FlagTier.Flag => inputs.Parameters.FlagsPer50AircraftYears,
                        FlagTier.Watch => inputs.Parameters.WatchesPer50AircraftYears,
                        _ => null,
                    },
                    AircraftYearsPerFalseCall = years,
                    IsAircraftYearsCapped = isCapped,
                };
            }
        }
    }

    /// <summary>The call that stands, and the period that raised it. A score below the lower line of a limit has no call of it.</summary>
    private static (FlagTier? Tier, int? Called) Standing(ChangeWatch watch, int unit, double logScore, ChangeLimits limits)
    {
        var lowerLine = Math.Log(ChangeLimits.Prior.LowerLine);
        foreach (var (tier, limit) in new[] { (FlagTier.Flag, limits.LogFlag), (FlagTier.Watch, limits.LogWatch) })
        {
            if (logScore >= limit + lowerLine && watch.Calls(unit, limit, lowerLine) is [.., (var from, null)])
                return (tier, from);
        }

        return (null, null);
    }

    private static Change Described(
        TypeGroupInputs inputs, ClassPanel panel, WatchedUnit unit, ChangeScore score, RateSpread spread, Dictionary<string, string> kinds) => new()
        {
            TypeGroup = inputs.TypeGroup,
            Base = "",
            Condition = panel.Class.Condition,
            Kind = panel.Class.Kind,
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
            .Select(g => new ChangedLocation(g.Key, panel.Class.Kind ?? kinds[g.Key], g.Count()))],
            Ratio = score.Ratio,
            FoundBefore = score.FoundBefore,
            ExpectedBefore = score.ExpectedBefore,
            FoundSince = score.FoundSince,
            ExpectedSince = score.ExpectedSince,
            RatioSince = Ratio(score, spread, inputs.Parameters.Confidence),
            OthersCount = panel.Panel.Units.Count - 1,
            AircraftYearsPerFalseCall = 0,
            IsAircraftYearsCapped = false,
            Dispersion = spread.Dispersion,
            Variation = 1 / Math.Sqrt(spread.Shape),
        };

    private static Figure Ratio(ChangeScore score, RateSpread spread, double confidence)
    {
        var figure = new Figure { Confidence = confidence, Unit = "", Events = score.FoundSince, Method = RatioMethod };
        if (!(score.ExpectedSince > 0))
            return figure with { NotEnoughData = Figures.OthersHadNone };
        var ratio = EffectRatio.OverNorm(score.FoundSince, score.ExpectedSince, spread.Dispersion, confidence);
        return figure with { Value = Figures.Finite(ratio.Value), Lower = ratio.Interval.Lower, Upper = Figures.Finite(ratio.Interval.Upper) };
    }
}
