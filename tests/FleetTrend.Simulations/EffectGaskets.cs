using FleetTrend.Statistics.Changes;
using FleetTrend.Statistics.Effects;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Simulations;

/// <summary>
/// Gaskets of 30 aircraft at three bases, six each: Weibull lives of scale 900 h and shape 2.2, where a part carries the practice with which it was
/// fitted. The first base changes its practice two and a half years after the first day.
/// </summary>
internal sealed record EffectGaskets
{
    private const double YearDays = 365.25;
    private const double PracticeDay = 2.5 * YearDays;
    private const double WindowDays = 20 * 28;
    private const int AircraftOfABase = 10;
    private static readonly CallFleet Fleet = new() { Years = 5, Locations = 6, LifeShape = 2.2, LifeScale = 900 };

    /// <summary>Times the hazard of a part fitted at the base before its practice changed.</summary>
    public double Before { get; init; } = 1;

    /// <summary>Times the hazard of a part fitted there after it.</summary>
    public double After { get; init; } = 1;

    /// <summary>Times the hazard of a part fitted elsewhere after it.</summary>
    public double OthersAfter { get; init; } = 1;

    /// <summary>Whether every base changes its practice, so that nobody is left beside.</summary>
    public bool IsEverywhere { get; init; }

    /// <summary>Whether the base is the one of the three that had most failures in the year before.</summary>
    public bool IsWorst { get; init; }

    public EffectStudy Run(int replications)
    {
        var study = new EffectStudy();
        Parallel.For(0, replications, r => Follow(study, new Random(unchecked(37 * 10_007 + r))));
        return study;
    }

    private double Factor(bool isAtBase, double fitted)
    {
        return fitted <= PracticeDay ? (isAtBase ? Before : 1) : isAtBase || IsEverywhere ? After : OthersAfter;
    }

    private void Follow(EffectStudy study, Random random)
    {
        var tails = Enumerable.Range(0, Fleet.Aircraft).Select(i => Draw(random, i, i < AircraftOfABase)).ToList();
        if (IsWorst)
        {
            int Failures(IEnumerable<List<Span>> of) => of.Sum(t => t.Count(s => s.Failed && s.Day > PracticeDay - YearDays && s.Day <= PracticeDay));
            tails = [.. tails.Chunk(AircraftOfABase).OrderByDescending(Failures).SelectMany(t => t)];
        }

        var fit = LifeFit.Fit(LifeDistribution.Weibull, [.. tails.SelectMany(t => Lives(t))]).Match(f => f.Model, _ => throw new InvalidOperationException("No fit."));
        var touched = IsEverywhere ? tails : tails[..AircraftOfABase];
        var others = IsEverywhere ? [] : tails[AircraftOfABase..];
        var spread = RateSpread.Estimate(Panel(tails, fit));
        var (verdict, at) = (EffectVerdict.TooEarly, (double)EffectStudy.Weeks);
        for (var week = 1; week <= EffectStudy.Weeks; week++)
        {
            var until = PracticeDay + 7 * week;
            List<List<EffectLook>> looks = [.. touched.Select(t => Looks(t, fit, PracticeDay - WindowDays, until).ToList())];
            // Where nobody is left beside, the touched aircraft's own past is the norm.
            var norm = EffectNorm.Estimate(
                EffectLooks.Others(
                    IsEverywhere ? looks.SelectMany(l => l).Where(l => l.After == 0) : others.SelectMany(t => Looks(t, fit, double.NegativeInfinity, until)),
                    Fleet.Locations),
                spread.Dispersion)!;
            List<IReadOnlyList<EffectLook>> expected = [.. looks.Select(norm.Expect)];
            if (verdict == EffectVerdict.TooEarly
                && EffectRules.JudgePractice(PracticeOdds.Log(expected, norm, spread, new ChangePrior())) is not EffectVerdict.TooEarly and var said)
            {
                (verdict, at) = (said, week);
            }
        }

        study.Add(verdict, at, at * 7 * Fleet.HoursPerYear / YearDays);
    }

    private List<Span> Draw(Random random, int index, bool isAtBase)
    {
        var (level, perDay, _, days) = Fleet.Tail(random, index);
        var spans = new List<Span>();
        for (var l = 0; l < Fleet.Locations; l++)
        {
            var age = random.NextDouble() < 0.5 ? 0 : Draws.Between(random, 0, 0.8 * Fleet.LifeScale);
            var (since, fitted, entry) = (0.0, double.NegativeInfinity, age);
            foreach (var day in days)
            {
                var to = age + (day - since) * perDay;
                var hazard = Math.Pow(to / Fleet.LifeScale, Fleet.LifeShape) - Math.Pow(age / Fleet.LifeScale, Fleet.LifeShape);
                var failed = random.NextDouble() < 1 - Math.Exp(-level * Factor(isAtBase, fitted) * hazard);
                spans.Add(new Span(day, l, fitted, entry, age, to, failed));
                since = day;
                (age, fitted, entry) = failed ? (0, day, 0) : (to, fitted, entry);
            }
        }

        return spans;
    }

    private static IEnumerable<Life> Lives(List<Span> tail) => tail.GroupBy(s => (s.Location, s.Fitted)).Select(g => g.Last())
        .Select(s => new Life(s.Failed ? s.From : s.To, s.Failed ? s.To : double.PositiveInfinity, s.Entry))
        .Where(l => l.Upper > l.Entry && (l.Lower > l.Entry || double.IsFinite(l.Upper)));

    private static IEnumerable<EffectLook> Looks(List<Span> tail, LifeModel fit, double from, double until)
    {
        foreach (var span in tail.Where(s => s.Day > from && s.Day <= until))
        {
            var rise = Math.Max(0, fit.CumulativeHazard(span.To) - fit.CumulativeHazard(span.From));
            var isAfter = span.Fitted > PracticeDay;
            // Parts that were fitted before and are looked at after it say nothing of either.
            if (isAfter || span.Day <= PracticeDay)
                yield return new EffectLook((int)span.Day, span.Location, isAfter ? 0 : rise, isAfter ? rise : 0, span.Failed ? 1 : 0);
        }
    }

    private static WatchedPanel Panel(List<List<Span>> tails, LifeModel fit) => new(
        Fleet.Periods, CallFleet.PeriodYears, Fleet.Scopes,
        [.. tails.Select((tail, i) =>
        {
            var exposure = Enumerable.Range(0, Fleet.Periods).Select(_ => new double[Fleet.Locations]).ToList();
            foreach (var s in tail)
                exposure[CallFleet.PeriodOf(s.Day)][s.Location] += Math.Max(0, fit.CumulativeHazard(s.To) - fit.CumulativeHazard(s.From));
            return new WatchedUnit($"{i}", 0, exposure, tail.Where(s => s.Failed).Select(s => new UnitFinding(CallFleet.PeriodOf(s.Day), s.Location)));
        })]);

    /// <summary>What one look at one part closes.</summary>
    private sealed record Span(double Day, int Location, double Fitted, double Entry, double From, double To, bool Failed);
}
