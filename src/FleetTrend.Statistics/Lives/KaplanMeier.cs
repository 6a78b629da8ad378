using MathNet.Numerics.Distributions;

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
    private KaplanMeier(IReadOnlyList<KaplanMeierPoint> points, long lives, long failures, double observedFrom)
    {
        Points = points;
        Lives = lives;
        Failures = failures;
        ObservedFrom = observedFrom;
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
        return new KaplanMeier(Walk(lives, confidence), total, failures, lives.Min(l => l.Entry));
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

    /// <summary>Mean life up to <paramref name="limit"/> hours, the area under the curve, with its standard error. Source: Klein and Moeschberger 1997, section 4.5.</summary>
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
        Life[] watched = [.. lives.Where(l => l.Failed || l.Lower > l.Entry)];
        var ends = watched.OrderBy(l => l.Lower).ToArray();
        var entries = watched.Select(l => (l.Entry, l.Count)).OrderBy(l => l.Entry).ToArray();
        var z = Normal.InvCDF(0, 1, (1 + confidence) / 2);
        var points = new List<KaplanMeierPoint>();
        double entered = 0, left = 0, survival = 1, greenwood = 0, hazard = 0, hazardVariance = 0;
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
                    PlainLimits = Plain(survival, greenwood, z, confidence),
                    LogLimits = Log(survival, greenwood, z, confidence),
                    LogLogLimits = LogLog(survival, greenwood, z, confidence),
                    ExactLimits = product.Limits(atRisk - failed, confidence),
                });
            }

            left += gone;
        }

        return points;
    }

    private static Interval Plain(double survival, double greenwood, double z, double confidence)
    {
        var reach = survival > 0 ? z * survival * Math.Sqrt(greenwood) : 0;
        return new Interval(Math.Max(0, survival - reach), Math.Min(1, survival + reach), confidence);
    }

    private static Interval Log(double survival, double greenwood, double z, double confidence)
    {
        if (survival <= 0) return new Interval(0, 1, confidence);
        var factor = Math.Exp(z * Math.Sqrt(greenwood));
        return new Interval(survival / factor, Math.Min(1, survival * factor), confidence);
    }

    private static Interval LogLog(double survival, double greenwood, double z, double confidence)
    {
        if (survival <= 0) return new Interval(0, 1, confidence);
        var power = Math.Exp(z * Math.Sqrt(greenwood) / -Math.Log(survival));
        return new Interval(Math.Pow(survival, power), Math.Pow(survival, 1 / power), confidence);
    }
}
