namespace FleetTrend.Statistics.Lives;

/// <summary>Decides whether a maximum can exist, and where to begin to look for it.</summary>
internal static class LifeFitStart
{
    /// <summary>Lives beyond which the start is sought on a sample.</summary>
    private const int SampleMax = 4000;

    /// <summary>Largest variance of the scale in units of z: e^20 either way.</summary>
    private const double ScaleVarianceMax = 400;

    /// <summary>Variance of ln shape below which far shapes cannot be likelier: the shape is known within a factor of 1.6.</summary>
    private const double KnownShapeVariance = 0.05;

    /// <summary>Step of ln shape in the row of shapes.</summary>
    private const double RowStep = 0.5;

    private static readonly double[] Shapes = [0.25, 0.5, 1, 2, 4, 8, 16];

    /// <summary>The reason for which no distribution of two parameters can be fitted, or null.</summary>
    internal static NotEstimable? Refusal(LifeArrays lives)
    {
        if (ScaleRefusal(lives) is { } refusal) return refusal;

        // When one age lies in every life's range, the likelihood rises for ever as the distribution closes in on that age.
        return lives.LatestGood <= lives.EarliestFailed
            ? new NotEstimable(
                NotEstimableKind.NoFiniteMaximum,
                lives.Failures,
                $"All failures can have happened at one single age, {lives.EarliestFailed} h or a little before: the shape has no upper end.")
            : null;
    }

    /// <summary>The reason for which not even a scale can be fitted, or null.</summary>
    internal static NotEstimable? ScaleRefusal(LifeArrays lives)
    {
        if (lives.Lives == 0) return new NotEstimable(NotEstimableKind.NothingObserved, 0, "There are no lives.");
        if (lives.Failures == 0)
        {
            return new NotEstimable(
                NotEstimableKind.NoEvents, 0, $"None of {lives.Lives} lives has failed: only a lower limit of life can be stated.");
        }

        return lives.HoursSeenGood <= 0
            ? new NotEstimable(
                NotEstimableKind.NoFiniteMaximum,
                lives.Failures,
                "No life was ever seen good while under observation: failure may have come at once.")
            : null;
    }

    internal static NotEstimable NoFiniteMaximum(long failures) => new(
        NotEstimableKind.NoFiniteMaximum,
        failures,
        $"With {failures} failures in these looks the likelihood has no maximum at a finite shape and scale.");

    /// <summary>
    /// The greatest maximum, or null where there is none: a plateau or a hill lower than what lies on the way to a degenerate distribution is no
    /// maximum. It is climbed to from the best of a range of shapes, with many lives from the maximum on a sample; where that leaves the
    /// shape uncertain, as few failures do, every hill over a close row of shapes is tried.
    /// </summary>
    internal static LikelihoodSearch.Peak? Peak(LikelihoodSearch search, IReadOnlyList<Life> lives)
    {
        var peak = OfSample(search, lives) ?? OfBestShape(search);
        if (peak is not null && LogCovariance.Invert(peak.Point) is { LogShape: < KnownShapeVariance }) return IsHeld(peak) ? peak : null;

        var tops = Row(search, peak?.Mu ?? search.Lives.MeanLogAge());
        for (var i = 1; i < tops.Count - 1; i++)
        {
            if (tops[i].Point.Value < tops[i - 1].Point.Value || tops[i].Point.Value < tops[i + 1].Point.Value) continue;
            if (peak?.Point.Value >= tops[i].Point.Value + 1) continue; // between two shapes of the row it rises by less
            if (search.Maximise(tops[i].Mu, tops[i].Tau) is { } other && !(peak?.Point.Value >= other.Point.Value)) peak = other;
        }

        return peak is not null
            && Math.Max(tops[0].Point.Value, tops[^1].Point.Value) <= peak.Point.Value - 1e-6
            && tops.TrueForAll(t => t.Point.Value <= peak.Point.Value + 1e-6)
            && IsHeld(peak) ? peak : null;
    }

    /// <summary>The best mu at each of a close row of shapes.</summary>
    internal static List<LikelihoodSearch.Peak> Row(LikelihoodSearch search, double start)
    {
        var tops = new List<LikelihoodSearch.Peak>();
        foreach (var side in (int[])[-1, +1])
        {
            var mu = start;
            for (var tau = side < 0 ? 0 : RowStep; Math.Abs(tau) <= LikelihoodSearch.TauLimit; tau += side * RowStep)
            {
                if (search.GreatestAt(tau, mu) is not { } top) continue;
                tops.Add(top);
                mu = top.Mu;
            }
        }

        tops.Sort((a, b) => a.Tau.CompareTo(b.Tau));
        return tops;
    }

    /// <summary>With late entries only, survival may fall like a power of age all along: then the scale runs off to nothing.</summary>
    private static bool IsHeld(LikelihoodSearch.Peak peak) =>
        LogCovariance.Invert(peak.Point) is { } covariance && covariance.LogScale * Math.Exp(2 * peak.Tau) <= ScaleVarianceMax;

    /// <summary>The maximum from that on a sample of many lives, or null.</summary>
    private static LikelihoodSearch.Peak? OfSample(LikelihoodSearch search, IReadOnlyList<Life> lives)
    {
        if (lives.Count <= 2 * SampleMax) return null;
        var sample = new LifeArrays(lives, lives.Count / SampleMax);
        return sample.Failures > 50 && OfBestShape(new LikelihoodSearch(search.Family, sample)) is { } near ? search.Maximise(near.Mu, near.Tau) : null;
    }

    /// <summary>The maximum from the first start that leads to one, starts in order of their likelihood.</summary>
    private static LikelihoodSearch.Peak? OfBestShape(LikelihoodSearch search)
    {
        var starts = new List<LikelihoodSearch.Peak>();
        var mu = search.Lives.MeanLogAge();
        foreach (var shape in Shapes)
        {
            if (search.GreatestAt(Math.Log(shape), mu) is not { } best) continue;
            starts.Add(best);
            mu = best.Mu;
        }

        return starts.OrderByDescending(s => s.Point.Value)
            .Select(s => search.Maximise(s.Mu, s.Tau))
            .FirstOrDefault(p => p is not null);
    }
}
