namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The product-limit estimate for failure ages known exactly, right censoring and late entry: what
/// <see cref="TurnbullEstimate"/> becomes on such lives, with limits in closed form. At one age failures come before censorings.
/// </summary>
/// <remarks>
/// Source: Kaplan and Meier 1958; Greenwood 1926; log-log limits, Kalbfleisch and Prentice 1980; small-sample limits by beta products,
/// Fay, Brittain and Proschan 2013 (moments of the product matched by one beta); NIST/SEMATECH e-Handbook 8.2.1.5.
/// </remarks>
public sealed class KaplanMeier
{
    private readonly Lazy<AtRiskByAge> watched;
    private readonly bool hasLateEntries;

    private KaplanMeier(IReadOnlyList<KaplanMeierPoint> points, IReadOnlyList<Life> lives)
    {
        watched = new Lazy<AtRiskByAge>(() => new AtRiskByAge(lives));
        hasLateEntries = lives.Any(l => l.Entry > 0);
        Points = points;
        Lives = lives.Sum(l => (long)l.Count);
        Failures = lives.Where(l => l.Failed).Sum(l => (long)l.Count);
        ObservedFrom = lives.Min(l => l.Entry);
    }

    /// <summary>One point for each age at which a life failed, in order of age.</summary>
    public IReadOnlyList<KaplanMeierPoint> Points { get; }

    /// <summary>Lives in the data, counts included.</summary>
    public long Lives { get; }

    /// <summary>Failures among them.</summary>
    public long Failures { get; }

    /// <summary>Smallest entry age, hours: the estimate is conditional on surviving to it.</summary>
    public double ObservedFrom { get; }

    /// <summary>Estimates survival. Source: see the type's remarks.</summary>
    /// <param name="lives">Lives whose failure ages are exact, in any order.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <exception cref="ArgumentException">A life failed between two looks: use <see cref="TurnbullEstimate"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    public static Outcome<KaplanMeier> Estimate(IReadOnlyList<Life> lives, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        if (lives.Any(l => l.Failed && !l.IsExact))
            throw new ArgumentException("The product-limit estimate needs exact failure ages; some lives failed between two looks.", nameof(lives));
        var total = lives.Sum(l => (long)l.Count);
        var failures = lives.Where(l => l.Failed).Sum(l => (long)l.Count);
        if (total == 0) return new NotEstimable(NotEstimableKind.NothingObserved, 0, "There are no lives.");
        if (failures == 0) return new NotEstimable(NotEstimableKind.NoEvents, 0, $"None of {total} lives has failed.");
        return new KaplanMeier(Walk(lives, confidence), lives);
    }

    /// <summary>
    /// The life table of lives that were all looked at at the same ages, each as far as it was followed: failures found at a look over lives
    /// good at the look before. Points lie at the looks; between them the estimate says nothing. It is what
    /// <see cref="TurnbullEstimate"/> becomes on such lives, with Greenwood's standard errors and limits.
    /// </summary>
    /// <param name="lives">The lives, in any order.</param>
    /// <param name="confidence">Confidence of the limits, in (0, 1).</param>
    /// <returns>The estimate; <see cref="NotEstimableKind.NoInformation"/> where a life failed between two looks with another life's look,
    /// entry or failure between them.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not in (0, 1).</exception>
    /// <remarks>Source: Meeker and Escobar 1998, sections 3.3 to 3.5 (interval data, Greenwood's formula).</remarks>
    public static Outcome<KaplanMeier> EstimateLifeTable(IReadOnlyList<Life> lives, double confidence = 0.95)
    {
        double[] looks = [.. lives.SelectMany(l => (double[])[l.Entry, l.Lower, l.Upper]).Where(double.IsFinite).Distinct().Order()];
        foreach (var life in lives)
        {
            if (life.Failed && Array.BinarySearch(looks, life.Upper) - Array.BinarySearch(looks, life.Lower) > 1)
            {
                return new NotEstimable(
                    NotEstimableKind.NoInformation,
                    lives.Where(l => l.Failed).Sum(l => (long)l.Count),
                    $"Lives were not looked at at the same ages: other looks lie between {life.Lower} h and {life.Upper} h.");
            }
        }

        return Estimate([.. lives.Select(l => l.Failed ? Life.FailedAt(l.Upper, l.Entry, l.Count) : l)], confidence);
    }

    /// <summary>Lives under observation and good just before <paramref name="age"/>: entered before it and not gone before it.</summary>
    public double AtRisk(double age) => watched.Value.AtRisk(age);

    /// <summary>
    /// Shares failed for probability plotting, one for each point: as one minus survival, but less than 1 when the oldest failed, and
    /// not bunched at the ends. Survival is (n + 0.7) / (n + 0.4) times the product of (at risk - 0.3) / (at risk + 0.7) over failures.
    /// </summary>
    /// <returns>The shares; <see cref="NotEstimableKind.NoInformation"/> with late entries, for which the form is not defined.</returns>
    /// <remarks>Source: modified Kaplan-Meier estimate, NIST/SEMATECH e-Handbook 8.2.1.5; formula from memory.</remarks>
    public Outcome<IReadOnlyList<double>> PlottingPositions()
    {
        if (hasLateEntries)
        {
            return new NotEstimable(
                NotEstimableKind.NoInformation, Failures, "Plotting positions are defined for lives followed from new only.");
        }

        var survival = (Lives + 0.7) / (Lives + 0.4);
        var shares = new List<double>(Points.Count);
        foreach (var point in Points)
        {
            survival *= (point.AtRisk - point.Failures + 0.7) / (point.AtRisk + 0.7); // failures at one age one after another
            shares.Add(1 - survival);
        }

        return shares;
    }

    /// <summary>Probability of surviving beyond <paramref name="age"/>: that of the last point at or before it. Source: Kaplan and Meier 1958.</summary>
    public double Survival(double age) => PointAt(age)?.Survival ?? 1;

    /// <summary>The last point at or before <paramref name="age"/>, or null when nothing had failed by then.</summary>
    public KaplanMeierPoint? PointAt(double age)
    {
        var (low, high) = (0, Points.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Points[middle].Age <= age) low = middle + 1;
            else high = middle;
        }

        return low == 0 ? null : Points[low - 1];
    }

    /// <summary>
    /// The age by which a share <paramref name="probability"/> has failed: the first at which survival is 1 - probability or less; where it
    /// equals that over a stretch, the middle of the stretch. A reason when survival stays above. Source: Kaplan and Meier 1958.
    /// </summary>
    public Outcome<double> Quantile(double probability)
    {
        if (!(probability is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A quantile's probability lies strictly between 0 and 1.");
        for (var i = 0; i < Points.Count; i++)
        {
            var above = Points[i].Survival - (1 - probability);
            if (Math.Abs(above) < 1e-12 && i + 1 < Points.Count) return (Points[i].Age + Points[i + 1].Age) / 2;
            if (above < 1e-12) return Points[i].Age;
        }

        return new NotEstimable(
            NotEstimableKind.TooFewEvents, Failures, $"Survival stays above {1 - probability} as far as was looked.");
    }

    /// <summary>
    /// As <see cref="Quantile(double)"/>, with limits: the first ages at which the limits of survival fall to 1 - probability.
    /// </summary>
    /// <param name="probability">Share failed, in (0, 1).</param>
    /// <param name="limits">Which limits of survival to turn, for example <c>p => p.LogLimits</c>.</param>
    /// <returns>The age with its interval, whose upper end is infinite where the upper limit of survival stays above.</returns>
    /// <remarks>Source: Brookmeyer and Crowley 1982.</remarks>
    public Outcome<IntervalEstimate> Quantile(double probability, Func<KaplanMeierPoint, Interval> limits) =>
        Quantile(probability).Then<IntervalEstimate>(age =>
        {
            var bounds = Points.Select(p => (p.Age, Limits: limits(p))).ToList();
            var first = bounds.First(b => b.Limits.Lower <= 1 - probability).Age;
            var last = bounds.Where(b => b.Limits.Upper <= 1 - probability).Select(b => b.Age).FirstOrDefault(double.PositiveInfinity);
            return new IntervalEstimate(age, new Interval(Math.Min(first, age), Math.Max(last, age), bounds[0].Limits.Confidence));
        });

    /// <summary>
    /// Mean life up to <paramref name="limit"/> hours, the area under the curve, with its standard error. Source: Klein and
    /// Moeschberger 1997, section 4.5.
    /// </summary>
    public (double Mean, double StandardError) RestrictedMean(double limit)
    {
        double area = 0, variance = 0;
        var right = limit;
        for (var i = Points.Count - 1; i >= 0; i--)
        {
            var p = Points[i];
            if (p.Age >= limit) continue;
            area += p.Survival * (right - p.Age);
            right = p.Age;
            if (p.AtRisk > p.Failures) variance += area * area * p.Failures / (p.AtRisk * (p.AtRisk - p.Failures));
        }

        return (area + right, Math.Sqrt(variance));
    }

    private static List<KaplanMeierPoint> Walk(IReadOnlyList<Life> lives, double confidence)
    {
        // Ages in order; lives good at an age or beyond are at risk there when they entered before it.
        Life[] seen = [.. lives.Where(l => l.Failed || l.Lower > l.Entry)];
        var ends = seen.OrderBy(l => l.Lower).ToArray();
        var entries = seen.Select(l => (l.Entry, l.Count)).OrderBy(l => l.Entry).ToArray();
        var limits = new SurvivalLimits(confidence);
        var points = new List<KaplanMeierPoint>();
        double entered = 0, left = 0, survival = 1, greenwood = 0, hazard = 0, hazardVariance = 0, parted = 0;
        var product = new BetaProduct();
        for (int i = 0, e = 0; i < ends.Length;)
        {
            var age = ends[i].Lower;
            while (e < entries.Length && entries[e].Entry < age) entered += entries[e++].Count;
            double failed = 0, gone = 0;
            for (; i < ends.Length && ends[i].Lower == age; i++)
            {
                gone += ends[i].Count;
                if (ends[i].Failed) failed += ends[i].Count;
            }

            if (failed > 0)
            {
                var atRisk = entered - left;
                survival *= (atRisk - failed) / atRisk;
                greenwood += atRisk > failed ? failed / (atRisk * (atRisk - failed)) : double.PositiveInfinity;
                hazard += failed / atRisk;
                hazardVariance += failed / (atRisk * atRisk);
                for (var k = 0; k < failed; k++) parted += 1 / (atRisk - k);
                product = product.Times(atRisk - failed + 1, failed);
                points.Add(new KaplanMeierPoint
                {
                    Age = age,
                    AtRisk = atRisk,
                    Failures = failed,
                    Survival = survival,
                    StandardError = survival > 0 ? survival * Math.Sqrt(greenwood) : 0,
                    CumulativeHazard = hazard,
                    CumulativeHazardStandardError = Math.Sqrt(hazardVariance),
                    FlemingHarringtonHazard = parted,
                    PlainLimits = limits.Plain(survival, greenwood),
                    LogLimits = limits.Log(survival, greenwood),
                    LogLogLimits = limits.LogLog(survival, greenwood),
                    LogitLimits = limits.Logit(survival, greenwood),
                    ArcsineLimits = limits.Arcsine(survival, greenwood),
                    ExactLimits = product.Limits(atRisk - failed, confidence),
                });
            }

            left += gone;
        }

        return points;
    }
}
