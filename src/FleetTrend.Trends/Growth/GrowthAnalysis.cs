using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Trends.Growth;

/// <summary>
/// Whether a condition comes more or less often at each kind of place of a type group: over the last three years of the calendar, each aircraft
/// beside itself, and
/// over the hours of the aircraft, older ones also beside younger ones. A statement about a kind; it raises no flag.
/// </summary>
public sealed class GrowthAnalysis : Analysis<GrowthTrend>
{
    /// <summary>The calendar compares now with so many years ago.</summary>
    public const int ComparedYears = 2;

    /// <summary>Fewest findings from which a growth is told: COVERAGE.md has what its limits hold from there on.</summary>
    public const int FewestEvents = 5;

    private const string Clustered = "limits with aircraft as clusters, Student's t (Liang and Zeger 1986; Kauermann and Carroll 2001)";

    private const string CalendarMethod =
        $"rate as an exponential of time over three years, findings between looks, each aircraft given how many it had (Cox and Lewis 1966); {Clustered}";

    private const string HoursMethod = $"power law of the mean count in time in service, findings between looks (MIL-HDBK-189; Crow 1975); {Clustered}";

    /// <summary>Makes the analysis.</summary>
    public GrowthAnalysis()
        : base("growth")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(GrowthTrend item) => new(Kind: item.Kind);

    /// <inheritdoc/>
    public override Headline HeadlineOf(GrowthTrend item) => Headline.From(item.Condition.ToString(), item.Calendar.Growth);

    /// <summary>What gets worse first, then what gets better, then the most findings.</summary>
    public override IEnumerable<GrowthTrend> Order(IEnumerable<GrowthTrend> items) => items
        .OrderBy(t => Rank(t.Calendar.Finding)).ThenBy(t => Rank(t.Hours?.Finding ?? GrowthFinding.NotTold))
        .ThenByDescending(t => Math.Max(t.Calendar.Events, t.Hours?.Events ?? 0))
        .ThenBy(t => t.TypeGroup, StringComparer.Ordinal).ThenBy(t => t.Kind, StringComparer.Ordinal).ThenBy(t => t.Condition);

    /// <inheritdoc/>
    public override IReadOnlyList<GrowthTrend> Settle(IReadOnlyList<GrowthTrend> items, TestFamily tests, TrendParameters parameters) =>
        [.. items.Select(t => t with { Calendar = Settle(t.Calendar, tests, parameters), Hours = t.Hours is { } h ? Settle(h, tests, parameters) : null })];

    /// <inheritdoc/>
    protected override IEnumerable<GrowthTrend> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var hours = inputs.Aircraft.ToDictionary(a => a.Registration, a => a.Hours, StringComparer.Ordinal);
        foreach (var places in inputs.Observations.Locations.GroupBy(l => l.Kind.Name, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var kind = places.First().Kind;
            List<Condition> conditions = [.. places.SelectMany(p => p.Conditions).Distinct().Order()
                .Where(c => places.Any(p => p.Aircraft.Any(a => a.Count(c) > 0)))];
            if (conditions.Count == 0)
                continue;
            var spans = new GrowthSpans(places, hours, inputs.AsOfDate);
            foreach (var condition in conditions)
            {
                var trend = new GrowthTrend
                {
                    TypeGroup = inputs.TypeGroup,
                    Kind = kind.Name,
                    Title = kind.Title,
                    Condition = condition,
                    Calendar = Calendar(spans.ByCalendar(condition), inputs.Parameters),
                    Hours = kind.HasLife ? null : ByHours(spans.ByHours(condition), inputs.Parameters),
                };
                foreach (var p in new[] { trend.Calendar.PValue, trend.Hours?.PValue }.OfType<double>())
                    tests.Add(p);
                yield return trend;
            }
        }
    }

    private static GrowthClock Calendar(IEnumerable<(string Registration, IReadOnlyList<GrowthSpan> Spans)> aircraft, TrendParameters parameters) =>
        Clock([.. aircraft.Select(a => a.Spans)], GrowthLaw.LogLinear, GrowthLevels.Own, CalendarMethod, parameters, b => Math.Exp(ComparedYears * b));

    private static GrowthClock ByHours(IEnumerable<(string Registration, IReadOnlyList<GrowthSpan> Spans)> aircraft, TrendParameters parameters) =>
        Clock([.. aircraft.Select(a => a.Spans)], GrowthLaw.PowerLaw, GrowthLevels.Common, HoursMethod, parameters, b => b);

    private static GrowthClock Clock(
        IReadOnlyList<IReadOnlyList<GrowthSpan>> units, GrowthLaw law, GrowthLevels levels, string method, TrendParameters parameters,
        Func<double, double> shown)
    {
        var (events, aircraft) = (units.Sum(u => u.Sum(s => s.Events)), units.Count(u => u.Any(s => s.Events > 0)));
        var figure = new Figure
        {
            Confidence = parameters.Confidence,
            Unit = "",
            Events = events,
            ExposureHours = Math.Round(units.Sum(u => u.Sum(s => s.Exposure)), 1),
            Method = method,
        };
        var fit = events >= FewestEvents
            ? GrowthFit.Estimate(units, law, levels, parameters.Confidence)
            : new NotEstimable(NotEstimableKind.TooFewEvents, events, "Too few findings.");
        return fit.Match(
            f => new GrowthClock
            {
                Events = events,
                Aircraft = aircraft,
                Growth = figure with
                {
                    Value = shown(f.Growth.Value),
                    Lower = Figures.Finite(shown(f.Growth.Interval.Lower)),
                    Upper = Figures.Finite(shown(f.Growth.Interval.Upper)),
                },
                PValue = f.PValue,
            },
            reason => new GrowthClock
            {
                Events = events,
                Aircraft = aircraft,
                Growth = figure with
                {
                    NotEnoughData = reason.Kind == NotEstimableKind.NoFiniteMaximum
                        ? "not enough data: all findings lie at one end of what was watched"
                        : $"not enough data: {NumberWords.Count(events, "finding", "findings")} on {aircraft} aircraft",
                },
            });
    }

    private static GrowthClock Settle(GrowthClock clock, TestFamily tests, TrendParameters parameters)
    {
        if (clock.PValue is not { } p)
            return clock;
        var adjusted = tests.HolmPValue(p);
        return clock with
        {
            AdjustedPValue = adjusted,
            Finding = adjusted >= 1 - parameters.Confidence ? GrowthFinding.NoneShown : clock.Growth.Value > 1 ? GrowthFinding.Worse : GrowthFinding.Better,
        };
    }

    private static int Rank(GrowthFinding finding) => finding switch
    {
        GrowthFinding.Worse => 0,
        GrowthFinding.Better => 1,
        GrowthFinding.NoneShown => 2,
        _ => 3,
    };
}
