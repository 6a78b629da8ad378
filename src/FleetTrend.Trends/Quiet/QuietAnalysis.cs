using FleetTrend.Records.Sources;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Effects;
using FleetTrend.Statistics.Quiet;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.Quiet;

/// <summary>
/// Which aircraft and bases are too quiet: far fewer findings than the others would have over all classes of condition together, or locations that
/// are never examined. It asks; it raises no flag.
/// </summary>
public sealed class QuietAnalysis : Analysis<Quietness>
{
    private const string Method = "found over expected at the rates or lives of the others: exact Poisson limits (Garwood 1936)";

    /// <summary>Makes the analysis.</summary>
    public QuietAnalysis()
        : base("quiet")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(Quietness item) => new(Registration: item.Registration, Base: item.Base);

    /// <inheritdoc/>
    public override Headline HeadlineOf(Quietness item) => Headline.From("", item.Ratio);

    /// <summary>What is asked about first: few findings, then locations, the most striking first; the same order for the same answers.</summary>
    public override IEnumerable<Quietness> Order(IEnumerable<Quietness> items) => items
        .OrderByDescending(q => q.Verdict == QuietVerdict.Asked ? q.LogOdds : null)
        .ThenByDescending(q => q.Unexamined.Count)
        .ThenBy(q => q.TypeGroup, StringComparer.Ordinal)
        .ThenBy(q => q.Registration, StringComparer.Ordinal)
        .ThenBy(q => q.Base, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<Quietness> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var never = NeverExamined.Find(inputs);
        var expectations = inputs.Expectations;
        var aircraft = Combine(expectations.ByAircraft, null);
        var bases = Combine(expectations.ByBase, aircraft.Spread);
        foreach (var one in inputs.Present.Where(a => a.RetiredDate is null))
        {
            var blank = Blank(inputs) with { Registration = one.Registration, Base = one.Base, Unexamined = never.OfAircraft(one.Registration) };
            var told = Tell(inputs, blank, aircraft, one.Registration);
            if (told.SinceDate is { } since && one.LatestInspection is { } latest && one.Hours.On(since) is { } from)
                told = told with { Hours = Math.Max(0, (latest.Hours - from).Value) };
            yield return Asked(told, Evidence(inputs, told, [one.Registration]));
        }

        foreach (var atBase in inputs.Present.Where(a => a.RetiredDate is null).GroupBy(a => a.Base, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            if (bases.Units.ContainsKey(atBase.Key) || never.OfBase(atBase.Key).Count > 0)
            {
                var told = Tell(inputs, Blank(inputs) with { Base = atBase.Key, Unexamined = never.OfBase(atBase.Key) }, bases, atBase.Key);
                yield return Asked(told, Evidence(inputs, told, [.. atBase.Select(a => a.Registration)]));
            }
        }
    }

    private static Combined Combine(IReadOnlyList<ClassPanel> classes, RateSpread? members)
    {
        if (classes.Count == 0)
            return new Combined(classes, null, members ?? new RateSpread(1));
        var panel = CombinedPanel.Build([.. classes.Select(c => c.Panel)], classes[0].Calendar.Periods - 1);
        return new Combined(classes, panel, RateSpread.Estimate(panel, members));
    }

    private static Quietness Blank(TypeGroupInputs inputs) => new()
    {
        TypeGroup = inputs.TypeGroup,
        Base = "",
        Verdict = QuietVerdict.TooEarly,
        Found = 0,
        Expected = 0,
        Ratio = Ratio(0, 0, 1, inputs.Parameters.Confidence),
        Classes = [],
        Unexamined = [],
        Questions = [],
        Evidence = [],
    };

    private static Quietness Tell(TypeGroupInputs inputs, Quietness blank, Combined among, string name)
    {
        if (!among.Units.TryGetValue(name, out var index) || among.Watch!.At(index) is not { } odds)
            return blank;
        var unit = among.Panel!.Units[index];
        var verdict = odds.IsAsked ? QuietVerdict.Asked : among.Watch.CanBeAsked(index) ? QuietVerdict.Ordinary : QuietVerdict.TooEarly;
        var since = verdict == QuietVerdict.Asked ? odds.Since : unit.FirstPeriod;
        var found = unit.Findings.Count(f => f.Period >= since);
        var expected = among.Watch.ExpectedSince(index, since);
        var day = among.Classes[0].Calendar.FirstDay(since);
        var watched = inputs.Aircraft.Where(a => a.Registration == blank.Registration).Select(a => a.WatchStartDate).DefaultIfEmpty(day).First();
        return blank with
        {
            Verdict = verdict,
            LogOdds = odds.Log,
            SinceDate = day < watched ? watched : day,
            Found = found,
            Expected = expected,
            Ratio = Ratio(found, expected, among.Spread.Dispersion, inputs.Parameters.Confidence),
            Classes = [.. among.Counts(name)],
        };
    }

    private static Quietness Asked(Quietness told, IReadOnlyList<RecordKey> evidence)
    {
        string[] few = told.Verdict == QuietVerdict.Asked ? [QuietWords.FewFindings(told)] : [];
        List<string> questions = [.. few, .. QuietWords.NotExamined(told)];
        return told with { Questions = questions, Evidence = questions.Count > 0 ? evidence : [] };
    }

    private static IReadOnlyList<RecordKey> Evidence(TypeGroupInputs inputs, Quietness told, IReadOnlyList<string> aircraft)
    {
        if (told.Verdict != QuietVerdict.Asked)
            return [.. told.Unexamined.SelectMany(l => l.Evidence).Distinct()];
        var own = inputs.Aircraft.Where(a => aircraft.Contains(a.Registration, StringComparer.Ordinal)).ToList();
        return
        [
            .. own.SelectMany(a => a.Events).Where(e => e.TypeGroup == inputs.TypeGroup && e.FoundDate >= told.SinceDate)
                .OrderBy(e => e.FoundDate).ThenBy(e => e.Location, StringComparer.Ordinal).ThenBy(e => e.Condition).SelectMany(e => e.Evidence)
                .Concat(own.SelectMany(a => a.Exposures).Where(e => e.TypeGroup == inputs.TypeGroup)
                    .OrderBy(e => e.Registration, StringComparer.Ordinal).ThenBy(e => e.Location, StringComparer.Ordinal).ThenBy(e => e.From)
                    .SelectMany(e => e.Evidence))
                .Concat(told.Unexamined.SelectMany(l => l.Evidence))
                .Distinct(),
        ];
    }

    private static Figure Ratio(int found, double expected, double dispersion, double confidence)
    {
        var estimate = expected > 0 ? EffectRatio.OverNorm(found, expected, dispersion, confidence) : (IntervalEstimate?)null;
        return new Figure
        {
            Value = estimate?.Value,
            Lower = estimate?.Interval.Lower,
            Upper = estimate?.Interval.Upper,
            Confidence = confidence,
            Unit = "",
            Events = found,
            Method = Method,
            NotEnoughData = estimate is null ? "not enough data: nothing was looked at, or the others had nothing there" : null,
        };
    }

    /// <summary>Aircraft, or bases, with all classes together.</summary>
    private sealed class Combined
    {
        private readonly List<Dictionary<string, (int Found, double Expected)>> byClass;

        public Combined(IReadOnlyList<ClassPanel> classes, WatchedPanel? panel, RateSpread spread)
        {
            (Classes, Panel, Spread) = (classes, panel, spread);
            Watch = panel is null ? null : new QuietWatch(panel, spread);
            Units = panel is null ? [] : panel.Units.Index().ToDictionary(u => u.Item.Name, u => u.Index, StringComparer.Ordinal);
            byClass =
            [
                .. classes.Select(c => c.Panel.Units.Zip(RateSpread.Expectations(c.Panel))
                    .ToDictionary(u => u.First.Name, u => u.Second, StringComparer.Ordinal)),
            ];
        }

        public IReadOnlyList<ClassPanel> Classes { get; }

        /// <summary>All classes together; null where there is none.</summary>
        public WatchedPanel? Panel { get; }

        public RateSpread Spread { get; }

        public QuietWatch? Watch { get; }

        /// <summary>Indices of the units by name.</summary>
        public Dictionary<string, int> Units { get; }

        public IEnumerable<QuietClass> Counts(string unit)
        {
            for (var i = 0; i < Classes.Count; i++)
            {
                if (byClass[i].TryGetValue(unit, out var count) && count.Expected > 0)
                    yield return new QuietClass(Classes[i].Class.Condition, Classes[i].Class.Kind, count.Found, count.Expected);
            }
        }
    }
}
