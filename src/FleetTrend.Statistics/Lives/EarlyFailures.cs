using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The chance that a new part fails before an early age, such as the next look, where the hazard up to that age is free and only its course
/// within those hours, and what comes later, follow a distribution.
/// </summary>
/// <remarks>
/// A distribution fitted to all ages says little about its own tail: parts that were fitted badly fail early and leave the rest alone. Here the
/// hazard of the distribution up to the age is multiplied by a factor, the most likely one for the lives: failures in the early hours over the hazard
/// of the distribution that the lives passed there; a failure between two looks counts by the chance that it was early (EM). Limits are those of a
/// count of that size (Garwood 1936), divided by the dispersion between units where that is above 1.
/// Source: EM, Dempster, Laird and Rubin 1977; piecewise proportional hazard, Friedman 1982; dispersion, McCullagh and Nelder 1989.
/// </remarks>
public sealed record EarlyFailures
{
    private const int StepsMax = 2000;

    private EarlyFailures(double age, double hazard, IReadOnlyList<(double Failures, double Exposure)> units, double confidence)
    {
        Age = age;
        Failures = units.Sum(u => u.Failures);
        Exposure = units.Sum(u => u.Exposure);
        var factor = Failures / Exposure;
        Units = units.Count;
        Squares = units.Count < 2 ? 0
            : units.Count / (units.Count - 1.0) * units.Sum(u => Math.Pow(u.Failures - (factor * u.Exposure), 2));
        var spread = Failures > 0 && units.Count > 1 ? Math.Max(1, Squares / Failures) : 1;
        var tail = (1 - confidence) / 2;
        Chance = new IntervalEstimate(
            ShareFailed(Failures), new Interval(ShareFailed(spread * Quantile.Gamma(tail, Failures / spread)),
                ShareFailed(spread * Quantile.Gamma(1 - tail, (Failures / spread) + 1)), confidence));

        double ShareFailed(double failures) => ElementaryFunctions.OneMinusExp(hazard * failures / Exposure);
    }

    /// <summary>The early age, hours.</summary>
    public double Age { get; }

    /// <summary>Failures before the age; one between two looks counts by its chance of being early.</summary>
    public double Failures { get; }

    /// <summary>Chance that a new part fails before the age.</summary>
    public IntervalEstimate Chance { get; }

    /// <summary>Hazard of the distribution that the lives passed in the early hours.</summary>
    internal double Exposure { get; }

    /// <summary>Units with lives.</summary>
    internal int Units { get; }

    /// <summary>Squared departures of the units' failures from their share, corrected for few units; 0 for a single one.</summary>
    internal double Squares { get; }

    /// <summary>Estimates the chance. Source: see the type's remarks.</summary>
    /// <param name="model">The distribution; where several sets are compared, the same for all.</param>
    /// <param name="units">Units (aircraft), each with its lives.</param>
    /// <param name="age">The early age, hours, above 0.</param>
    /// <param name="confidence">Confidence of the interval, in (0, 1).</param>
    /// <returns>The estimate; or the reason: no life was followed before the age.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The age is not above 0 and finite, or the confidence not in (0, 1).</exception>
    public static Outcome<EarlyFailures> Estimate(
        LifeModel model, IReadOnlyList<IReadOnlyList<Life>> units, double age, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        if (!(age > 0 && double.IsFinite(age))) throw new ArgumentOutOfRangeException(nameof(age), age, "An early age is above 0 and finite.");
        List<IReadOnlyList<Life>> watched = [.. units.Where(u => u.Count > 0)];
        // A distribution whose hazard there is next to nothing has no course to lend: a constant hazard then.
        var course = model.CumulativeHazard(age) > 1e-200 ? model : new LifeModel(LifeDistribution.Exponential, age);
        List<Passed[]> passed = [.. watched.Select(u => u.Select(l => Passed.By(l, course, age)).ToArray())];
        var factor = 1.0;
        List<(double Failures, double Exposure)> counts = [];
        for (var step = 0; step < StepsMax; step++)
        {
            counts = [.. passed.Select(u => Count(u, factor))];
            var exposure = counts.Sum(c => c.Exposure);
            if (!(exposure > 0))
                return new NotEstimable(NotEstimableKind.NoInformation, 0, $"No life was followed before {age:0.#} h.");
            var next = counts.Sum(c => c.Failures) / exposure;
            var isSettled = Math.Abs(next - factor) <= 1e-10 * factor || next == 0;
            factor = next;
            if (isSettled) break;
        }

        return new EarlyFailures(age, course.CumulativeHazard(age), counts, confidence);
    }

    private static (double Failures, double Exposure) Count(Passed[] lives, double factor)
    {
        double failures = 0, exposure = 0;
        foreach (var life in lives)
        {
            exposure += life.Count * life.Good;
            if (!life.IsFailedEarly) continue;
            if (life.IsExact)
            {
                failures += life.Count;
                continue;
            }

            var early = factor * life.Early;
            var share = early + life.Late > 0 ? ElementaryFunctions.OneMinusExp(early) / ElementaryFunctions.OneMinusExp(early + life.Late) : 0;
            failures += life.Count * share;
            // Mean hazard passed within the early hours, given that it failed in between (a martingale's difference has mean zero).
            var passed = early > 0 ? share - (early * Math.Exp(-early - life.Late) / ElementaryFunctions.OneMinusExp(early + life.Late)) : 0;
            exposure += factor > 0 ? life.Count * passed / factor : 0;
        }

        return (failures, exposure);
    }

    /// <summary>Hazard of the distribution that a life passed.</summary>
    /// <param name="Count">Lives like this.</param>
    /// <param name="Good">From entry to the last good look, in the early hours.</param>
    /// <param name="IsFailedEarly">Whether it may have failed in the early hours.</param>
    /// <param name="IsExact">Whether it is known when.</param>
    /// <param name="Early">From the last good look to the end of the early hours, or to the look that found it failed.</param>
    /// <param name="Late">From the end of the early hours to the look that found it failed.</param>
    private readonly record struct Passed(double Count, double Good, bool IsFailedEarly, bool IsExact, double Early, double Late)
    {
        public static Passed By(Life life, LifeModel model, double age)
        {
            var entered = model.CumulativeHazard(Math.Min(life.Entry, age));
            var good = model.CumulativeHazard(Math.Min(life.Lower, age));
            if (!life.Failed || life.Lower >= age || life.IsExact)
                return new Passed(life.Count, good - entered, life.Failed && life.Lower < age, life.IsExact, 0, 0);
            var early = model.CumulativeHazard(Math.Min(life.Upper, age)) - good;
            var late = life.Upper > age ? model.CumulativeHazard(life.Upper) - model.CumulativeHazard(age) : 0;
            return new Passed(life.Count, good - entered, true, false, early, late);
        }
    }
}
