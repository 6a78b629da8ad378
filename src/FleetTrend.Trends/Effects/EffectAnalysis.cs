using FleetTrend.Statistics;
using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Effects;
using FleetTrend.Trends.Expectations;
using FleetTrend.Trends.Restarts;

namespace FleetTrend.Trends.Effects;

/// <summary>
/// Whether what was done helped: for each flag about which something was done, and for each practice change, after beside before and beside those
/// not touched. A flag's action is judged by "back at its own level" against "still raised", since a subject is flagged for its findings.
/// </summary>
public sealed class EffectAnalysis : Analysis<Effect>
{
    private const int WindowDays = 20 * 28;
    private const double Confidence = 0.9;
    private const string AfterOverBeforeMethod =
        "found over expected after, over the same before: exact given their sum (Przyborowski and Wilenski 1940; Clopper and Pearson 1934)";

    private const string AfterOverNormMethod = "found over expected after, at the others' rates then: exact Poisson limits (Garwood 1936)";

    private static readonly ChangePrior Prior = new();

    /// <summary>Makes the analysis.</summary>
    public EffectAnalysis()
        : base("effects")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(Effect item) => new(Registration: item.Registration, Base: item.Base, Location: item.Location, Kind: item.Kind);

    /// <inheritdoc/>
    public override Headline HeadlineOf(Effect item) => Headline.From(item.Condition?.ToString() ?? item.Kind ?? "", item.AfterOverNorm);

    /// <summary>The newest action first; the same order for the same effects.</summary>
    public override IEnumerable<Effect> Order(IEnumerable<Effect> items) => items
        .OrderByDescending(e => e.ActionDate).ThenBy(e => e.TypeGroup, StringComparer.Ordinal)
        .ThenBy(e => e.FlagSubject, StringComparer.Ordinal)
        .ThenBy(e => e.Practice?.ToString(), StringComparer.Ordinal)
        .ThenBy(e => e.Condition).ThenBy(e => e.Kind, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<Effect> Find(TypeGroupInputs inputs, ICollection<double> tests) => OfFlags(inputs).Concat(OfPractices(inputs))
        .OrderBy(e => e.Registration, StringComparer.Ordinal).ThenBy(e => e.Base, StringComparer.Ordinal)
        .ThenBy(e => e.Location, StringComparer.Ordinal).ThenBy(e => e.Kind, StringComparer.Ordinal)
        .ThenBy(e => e.Condition).ThenBy(e => e.ActionDate).ThenBy(e => e.Practice?.ToString(), StringComparer.Ordinal);

    private static IEnumerable<Effect> OfFlags(TypeGroupInputs inputs)
    {
        var present = inputs.Present.Select(a => a.Registration).ToHashSet(StringComparer.Ordinal);
        foreach (var closing in inputs.FlagClosings)
        {
            if (closing.ActionDate is not { } day || FlagSubjects.Read(closing.Subject) is not { } subject)
                continue;
            if (subject.Registration is { } registration ? !present.Contains(registration) : subject.TypeGroup != inputs.TypeGroup)
                continue;
            var of = new ConditionClass(subject.Condition, subject.Kind);
            if (Looks(inputs, of) is not { Count: > 0 } looks)
                continue;
            var effect = subject.Registration is { } unit
                ? OfAircraft(inputs, of, looks, subject.Location, unit, day)
                : OfUnits(inputs, of, looks, l => l.Base == subject.Base, _ => true, day);
            if (effect is not null)
                yield return effect with { FlagSubject = closing.Subject, Base = subject.Base };
        }
    }

    private static IReadOnlyList<WatchedLook>? Looks(TypeGroupInputs inputs, ConditionClass of) => of.Kind is { } kind
        ? LifeLooks.Find(inputs, kind)
        : [.. inputs.RateLooks.Find(of.Condition!.Value, _ => true)];

    private static IEnumerable<Effect> OfPractices(TypeGroupInputs inputs)
    {
        var changes = inputs.PracticeChanges
            .Where(p => p.Change.ChangeDate <= inputs.AsOfDate && (p.Change.TypeGroup is null || p.Change.TypeGroup == inputs.TypeGroup)).ToList();
        if (changes.Count == 0)
            yield break;
        foreach (var (of, all) in GroupExpectations.FindClasses(inputs))
        {
            List<WatchedLook> looks = [.. all];
            foreach (var change in changes)
            {
                var content = change.Change;
                var found = OfUnits(
                    inputs, of, looks, l => content.IsAbout(l.Base, inputs.TypeGroup, l.Location),
                    l => content.Locations.Count == 0 || content.Locations.Contains(l.Location, StringComparer.Ordinal), content.ChangeDate.AddDays(-1));
                if (found is not null)
                    yield return found with { Practice = change.Key, What = content.What, Base = content.Base, ActionDate = content.ChangeDate };
            }
        }
    }

    /// <summary>An aircraft, or one location of it, against the others of the type group.</summary>
    private static Effect? OfAircraft(
        TypeGroupInputs inputs, ConditionClass of, IReadOnlyList<WatchedLook> looks, string? at, string registration, DateOnly day)
    {
        var panel = Panel(inputs, of, looks);
        var spread = RateSpread.Estimate(panel.Panel);
        var split = new SplitLooks(inputs, panel.Locations, day, isByPart: false);
        if (EffectNorm.Estimate(split.Others(looks.Where(l => l.Registration != registration)), spread.Dispersion) is not { } norm)
            return null;
        var own = norm.Expect(split.Split(looks.Where(l => l.Registration == registration)));
        var scopes = at is { } location
            ? [.. panel.Locations.Index().Where(l => l.Item == location).Select(l => new ChangeScope(location, [l.Index], 1))]
            : panel.Panel.Scopes;
        if (ActionOdds.Estimate(own, norm, day.DayNumber, scopes, spread, Prior) is not { } odds)
            return null;
        var inside = own.Where(l => odds.Scope.IsWhole || odds.Scope.Locations.Contains(l.Location)).ToList();
        return Described(inputs, inside, norm, spread, odds.Log, odds.Since, day, isPractice: false) with
        {
            Registration = registration,
            Location = at,
            Condition = of.Condition,
            Kind = of.Kind,
        };
    }

    /// <summary>The aircraft that were touched, against those that were not.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="of">The class of condition.</param>
    /// <param name="looks">All looks in it.</param>
    /// <param name="isTouched">Whether a look is at what was touched.</param>
    /// <param name="isThere">Whether a look is at a location that was touched somewhere.</param>
    /// <param name="lastDay">The last day before.</param>
    private static Effect? OfUnits(
        TypeGroupInputs inputs, ConditionClass of, IReadOnlyList<WatchedLook> looks, Func<WatchedLook, bool> isTouched, Func<WatchedLook, bool> isThere,
        DateOnly lastDay)
    {
        var windowStart = lastDay.AddDays(-WindowDays);
        List<WatchedLook> there = [.. looks.Where(isThere)];
        List<WatchedLook> touched = [.. there.Where(l => isTouched(l) && l.Date > windowStart)];
        if (touched.Count == 0)
            return null;
        var panel = Panel(inputs, of, looks);
        var spread = RateSpread.Estimate(panel.Panel);
        var split = new SplitLooks(inputs, panel.Locations, lastDay, isByPart: true);
        List<WatchedLook> others = [.. there.Where(l => !isTouched(l))];
        // Where nobody is left beside, the touched ones' own past is the norm, and how everybody's rates moved stays open.
        if (EffectNorm.Estimate(split.Others(others.Count > 0 ? others : touched.Where(l => l.Date <= lastDay)), spread.Dispersion) is not { } norm)
            return null;
        List<IReadOnlyList<EffectLook>> units = [.. touched.GroupBy(l => l.Registration, StringComparer.Ordinal).Select(g => norm.Expect(split.Split(g)))];
        var log = PracticeOdds.Log(units, norm, spread, Prior);
        return Described(inputs, [.. units.SelectMany(u => u)], norm, spread, log, windowStart.DayNumber, lastDay, isPractice: true) with
        {
            Condition = of.Condition,
            Kind = of.Kind,
        };
    }

    private static ClassPanel Panel(TypeGroupInputs inputs, ConditionClass of, IReadOnlyList<WatchedLook> looks) =>
        ClassPanel.Build(of, new HoursCalendar(looks.Min(l => l.Date), inputs.AsOfDate), looks, l => l.Registration);

    /// <summary>The figures. A look that holds the action counts on the side of its larger share; the odds know both.</summary>
    private static Effect Described(
        TypeGroupInputs inputs, IReadOnlyList<EffectLook> looks, EffectNorm norm, RateSpread spread, double logOdds, int since, DateOnly day, bool isPractice)
    {
        var before = looks.Where(l => l.Before >= l.After && l.Day > since).ToList();
        var after = looks.Where(l => l.Before < l.After).ToList();
        var (foundBefore, foundAfter) = (before.Sum(l => l.Found), after.Sum(l => l.Found));
        var (expectedBefore, expectedAfter) = (before.Sum(l => l.Before + l.After), norm.Move * after.Sum(l => l.Before + l.After));
        var verdict = isPractice ? EffectRules.JudgePractice(logOdds) : EffectRules.JudgeAction(logOdds, expectedAfter);
        var ratio = EffectRatio.AfterOverBefore(foundBefore, expectedBefore, foundAfter, expectedAfter, spread.Dispersion, Confidence);
        var overNorm = expectedAfter > 0 ? EffectRatio.OverNorm(foundAfter, expectedAfter, spread.Dispersion, Confidence) : (IntervalEstimate?)null;
        var afterOverBefore = Ratio(ratio, foundBefore + foundAfter, AfterOverBeforeMethod);
        return new Effect
        {
            TypeGroup = inputs.TypeGroup,
            ActionDate = day,
            Verdict = verdict,
            LogOdds = logOdds,
            BeforeSinceDate = DateOnly.FromDayNumber(Math.Max(since, before.Select(l => l.Day).DefaultIfEmpty(since).Min())),
            FoundBefore = foundBefore,
            ExpectedBefore = expectedBefore,
            FoundAfter = foundAfter,
            ExpectedAfter = expectedAfter,
            OthersFoundAfter = norm.FoundAfter,
            AfterOverBefore = afterOverBefore,
            AfterOverNorm = Ratio(overNorm, foundAfter, AfterOverNormMethod),
            Statement = EffectWords.Statement(verdict, foundBefore, expectedBefore, foundAfter, expectedAfter, afterOverBefore),
        };
    }

    private static Figure Ratio(IntervalEstimate? estimate, int events, string method) => new()
    {
        Value = estimate is { } e ? Figures.Finite(e.Value) : null,
        Lower = estimate?.Interval.Lower,
        Upper = estimate is { } u ? Figures.Finite(u.Interval.Upper) : null,
        Confidence = Confidence,
        Unit = "",
        Events = events,
        Method = method,
        NotEnoughData = estimate is { } v && double.IsFinite(v.Value) ? null : "not enough data: nothing found or looked at on one side",
    };
}
