using FleetTrend.Statistics.Rates;
using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// How many times more often the events recur in one group than in another, if their ratio is the same at all ages, whatever the rate's
/// course with age: the proportional-rates model, with a standard error that allows for units of different rates.
/// </summary>
public sealed record AndersenGillFit
{
    /// <summary>Second group's rate over the first's, with the robust interval on the logarithm.</summary>
    public required IntervalEstimate Ratio { get; init; }

    /// <summary>Logarithm of the ratio.</summary>
    public required double LogRatio { get; init; }

    /// <summary>Standard error of the logarithm if every unit of a group had the same rate: too small where units differ.</summary>
    public required double ModelStandardError { get; init; }

    /// <summary>Standard error of the logarithm from the spread between units.</summary>
    public required double RobustStandardError { get; init; }

    /// <summary>Score test of equal rates under the model: chi-square with one degree of freedom; too large where units differ.</summary>
    public required double ScoreChiSquare { get; init; }

    /// <summary>Score test of equal rates with the variance between units: chi-square with one degree of freedom.</summary>
    public required double RobustScoreChiSquare { get; init; }

    /// <summary>Chance of at least the robust score were the rates equal.</summary>
    public double PValue => SpecialFunctions.GammaUpperRegularized(0.5, RobustScoreChiSquare / 2);

    /// <summary>Events of both groups at ages at which both were watched.</summary>
    public required long Events { get; init; }

    /// <summary>Fits the ratio; events at one age are handled as Breslow does.</summary>
    /// <param name="first">Units of the first group.</param>
    /// <param name="second">Units of the second group.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>
    /// The fit; <see cref="NotEstimableKind.NoEvents"/> without events at ages at which both groups were watched;
    /// <see cref="NotEstimableKind.NoFiniteMaximum"/> where only one group had some.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>
    /// Source: Andersen and Gill 1982, Annals of Statistics 10; robust variance, Lin and Wei 1989, J. Am. Stat. Assoc. 84, and Lawless and
    /// Nadeau 1995, Technometrics 37.
    /// </remarks>
    public static Outcome<AndersenGillFit> Estimate(
        IReadOnlyList<RecurrenceUnit> first, IReadOnlyList<RecurrenceUnit> second, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        var ages = Ages(first, second);
        var likelihood = new PartialLikelihood(ages, TieHandling.Breslow);
        var events = (long)(likelihood.FirstEvents + likelihood.SecondEvents);
        if (events == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No event at an age at which both groups were watched.");
        if (likelihood.Maximise() is not { } b)
        {
            return new NotEstimable(
                NotEstimableKind.NoFiniteMaximum, events, "Only one of the groups had an event: the ratio has no finite estimate.");
        }

        var (score, information) = likelihood.At(0);
        var model = 1 / Math.Sqrt(likelihood.At(b).Information);
        var robust = model * model * Math.Sqrt(Residuals(ages, first, second, b).Sum(r => r * r));
        var spread = Residuals(ages, first, second, 0).Sum(r => r * r);
        var reach = Quantile.NormalTwoSided(confidence) * robust;
        return new AndersenGillFit
        {
            Ratio = new IntervalEstimate(Math.Exp(b), new Interval(Math.Exp(b - reach), Math.Exp(b + reach), confidence)),
            LogRatio = b,
            ModelStandardError = model,
            RobustStandardError = robust,
            ScoreChiSquare = score * score / information,
            RobustScoreChiSquare = spread > 0 ? score * score / spread : 0,
            Events = events,
        };
    }

    private static PartialLikelihood.Age[] Ages(IReadOnlyList<RecurrenceUnit> first, IReadOnlyList<RecurrenceUnit> second)
    {
        var (one, two) = (new RiskShare(first), new RiskShare(second));
        var events = first.SelectMany(u => u.EventTimes.Select(t => (Time: t, IsSecond: false)))
            .Concat(second.SelectMany(u => u.EventTimes.Select(t => (Time: t, IsSecond: true))));
        return
        [
            .. events.GroupBy(e => e.Time).OrderBy(g => g.Key).Select(g => new PartialLikelihood.Age(
                g.Key, one.Count(g.Key), two.Count(g.Key), g.Count(e => !e.IsSecond), g.Count(e => e.IsSecond))),
        ];
    }

    /// <summary>
    /// Each unit's part of the score: over its events its group (0 or 1) less the second group's share in the rate, less what it was
    /// expected to add at each age at which it was watched.
    /// </summary>
    private static IEnumerable<double> Residuals(
        PartialLikelihood.Age[] ages, IReadOnlyList<RecurrenceUnit> first, IReadOnlyList<RecurrenceUnit> second, double b)
    {
        var factor = Math.Exp(b);
        double Total(PartialLikelihood.Age a) => a.FirstAtRisk + (a.SecondAtRisk * factor);
        double Second(PartialLikelihood.Age a) => a.FirstAtRisk / Total(a);
        double First(PartialLikelihood.Age a) => -a.SecondAtRisk * factor / Total(a);
        var ofFirst = new ScoreInfluence(ages, First, a => First(a) / Total(a));
        var ofSecond = new ScoreInfluence(ages, Second, a => Second(a) * factor / Total(a));
        return first.Select(ofFirst.Sum).Concat(second.Select(ofSecond.Sum));
    }

    /// <summary>Sums over a unit's events and windows, by binary search in the event ages.</summary>
    private sealed class ScoreInfluence
    {
        private readonly double[] times;
        private readonly double[] jump;
        private readonly double[] drift;

        public ScoreInfluence(PartialLikelihood.Age[] ages, Func<PartialLikelihood.Age, double> atEvent, Func<PartialLikelihood.Age, double> perEvent)
        {
            times = Array.ConvertAll(ages, a => a.Time);
            jump = Array.ConvertAll(ages, a => atEvent(a));
            drift = new double[ages.Length + 1];
            for (var k = 0; k < ages.Length; k++)
                drift[k + 1] = drift[k] + perEvent(ages[k]) * (ages[k].FirstEvents + ages[k].SecondEvents);
        }

        public double Sum(RecurrenceUnit unit) =>
            unit.EventTimes.Sum(t => jump[Array.BinarySearch(times, t)]) - unit.Windows.Sum(w => drift[Count(w.Stop)] - drift[Count(w.Start)]);

        private int Count(double age)
        {
            var at = Array.BinarySearch(times, age);
            return at >= 0 ? at + 1 : ~at;
        }
    }
}
