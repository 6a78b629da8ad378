using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Trends.LeakErosions;

/// <summary>How soon a leak that is left erodes its port face, and the chance that each leak open now does before its next look.</summary>
public sealed class LeakErosionAnalysis : Analysis<LeakErosion>
{
    private const string FittedMethod =
        "1 - S(later)/S(good), Weibull from the first trace between looks at the face; aircraft independent and not their leaks: jackknife over aircraft on ln H, Student's t "
        + "(Lipsitz, Dear and Zhao 1994)";

    private const string FewMethod =
        "eroded, of those eroded or good so long, exact limits for as many as their aircraft tell (Clopper and Pearson 1934; Korn and Graubard 1998)";

    /// <summary>Fewest hours ahead: a face that was looked at just now has no chance to tell.</summary>
    private const double Least = 0.1;

    private static readonly double[] Marks = [50, 100, 200];

    /// <summary>Makes the analysis.</summary>
    public LeakErosionAnalysis()
        : base("leak-erosions")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(LeakErosion item) => new();

    /// <inheritdoc/>
    protected override IEnumerable<LeakErosion> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        List<LeftLeak> leaks = [.. inputs.Aircraft.SelectMany(LeftLeak.Find).Where(l => l.Leak.TypeGroup == inputs.TypeGroup)];
        if (leaks.Count == 0)
            yield break;
        List<LeftLeak> left = [.. leaks.Where(l => !l.IsErodedAtFirst)];
        IReadOnlyList<IReadOnlyList<Life>> lives =
            [.. left.GroupBy(l => l.Aircraft.Registration, StringComparer.Ordinal)
                .Select(g => (IReadOnlyList<Life>)[.. g.Select(l => l.ForFit()).OfType<Life>()])];
        List<(LeftLeak Leak, double Next)> open = [.. leaks.Where(l => l.IsOpen).Select(l => (l, NextLook(l, inputs)))];
        var ahead = Chances(lives, [.. Marks.Select(m => (0.0, m)), .. open.Select(o => (o.Leak.LastGood.Value, o.Next - o.Leak.LastGood.Value))],
            inputs.Parameters);
        yield return new LeakErosion
        {
            TypeGroup = inputs.TypeGroup,
            Leaks = leaks.Count,
            Aircraft = leaks.Select(l => l.Aircraft.Registration).Distinct(StringComparer.Ordinal).Count(),
            ErodedAtFirst = leaks.Count - left.Count,
            Eroded = left.Count(l => l.Eroded is not null),
            NotLookedAt = left.Count(l => l.ForFit() is null),
            Shares = [.. Marks.Select((hours, i) => Share(left, hours, ahead?[i], inputs.Parameters))],
            Open = [.. open.Select((o, i) => Describe(o.Leak, o.Next, ahead?[Marks.Length + i], left, inputs.Parameters))
                .OrderByDescending(o => o.IsEroded).ThenByDescending(o => o.Chance?.Value ?? 0).ThenByDescending(o => o.HoursLeft)
                .ThenBy(o => o.Registration, StringComparer.Ordinal).ThenBy(o => o.Location, StringComparer.Ordinal)],
        };
    }

    private static IReadOnlyList<IntervalEstimate>? Chances(
        IReadOnlyList<IReadOnlyList<Life>> lives, IReadOnlyList<(double, double)> spans, TrendParameters parameters) =>
        lives.Sum(u => u.Count(l => l.Failed)) >= parameters.MinimumFailuresForFit
            && SharesFailed.EstimateAhead(LifeDistribution.Weibull, lives, spans, parameters.Confidence).TryGetValue(out var shares)
            ? shares
            : null;

    private static ShareEroded Share(List<LeftLeak> left, double hours, IntervalEstimate? fitted, TrendParameters parameters)
    {
        var known = left.Where(l => l.Eroded is { } eroded && eroded.Value <= hours).ToList();
        var good = left.Where(l => l.LastGood.Value >= hours).ToList();
        var reached = left.Exists(l => (l.Eroded ?? l.LastGood).Value >= hours);
        var few = ClusteredShares.Estimate(
            [.. known.Concat(good).GroupBy(l => l.Aircraft.Registration, StringComparer.Ordinal)
                .Select(g => new ClusterCount(g.Count(l => l.Eroded is { } eroded && eroded.Value <= hours), g.Count()))],
            parameters.Confidence);
        var share = fitted ?? (few.TryGetValue(out var counted) ? counted : null);
        return new ShareEroded(hours, known.Count, good.Count, Figure(reached ? share : null, fitted is null, left, parameters, "nobody has looked at a face so long after"));
    }

    private static OpenLeak Describe(LeftLeak leak, double next, IntervalEstimate? chance, List<LeftLeak> left, TrendParameters parameters)
    {
        var isEroded = leak.IsErodedAtFirst || leak.Eroded is not null;
        var cases = left.Count(l => l.Eroded is not null);
        return new OpenLeak
        {
            Registration = leak.Aircraft.Registration,
            Base = leak.Aircraft.Base,
            Location = leak.Leak.Location,
            Face = leak.Face,
            FoundDate = leak.Leak.FoundDate,
            HoursLeft = HoursLeft(leak),
            GoodHours = leak.LastGood.Value,
            NextLookHours = next,
            IsEroded = isEroded,
            Chance = isEroded ? null : Figure(chance, isFew: false, left, parameters, cases == 0
                ? "we have no case yet"
                : $"{NumberWords.Count(cases, "case is", "cases are")} too few"),
            Evidence = leak.Leak.Evidence,
        };
    }

    private static Figure Figure(IntervalEstimate? share, bool isFew, List<LeftLeak> left, TrendParameters parameters, string why)
    {
        var (cases, followed) = (left.Count(l => l.Eroded is not null), left.Count(l => l.ForFit() is not null));
        var method = isFew ? FewMethod : FittedMethod;
        return share is { } told
            ? Figures.OfLives(told.Value, told.Interval, parameters.Confidence, "", cases, followed, method)
            : new Figure
            {
                Confidence = parameters.Confidence,
                Unit = "",
                Events = cases,
                Lives = followed,
                Method = method,
                NotEnoughData = $"not enough data: {why}",
            };
    }

    private static double HoursLeft(LeftLeak leak) =>
        leak.Aircraft.Latest is { } latest && latest.Hours > leak.Leak.Found ? (latest.Hours - leak.Leak.Found).Value : 0;

    /// <summary>Flight hours from the first trace to the next look at the leak: an interval after its last, or now where that is past.</summary>
    private static double NextLook(LeftLeak leak, TypeGroupInputs inputs)
    {
        var last = leak.Aircraft.Looks.FirstOrDefault(l => l.Location == leak.Leak.Location)?.LastDate is { } date && date > leak.Leak.FoundDate
            ? leak.Aircraft.Hours.On(date) ?? leak.Leak.Found
            : leak.Leak.Found;
        var since = last > leak.Leak.Found ? (last - leak.Leak.Found).Value : 0;
        var next = Math.Max(since + inputs.Parameters.LookIntervalHoursOf(inputs.TypeGroup, leak.Leak.Kind.Name), HoursLeft(leak));
        return Math.Max(next, leak.LastGood.Value + Least);
    }
}
