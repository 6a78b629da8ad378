namespace FleetTrend.Statistics.Lives;

/// <summary>Decides whether a maximum can exist, and where to begin to look for it.</summary>
internal static class LifeFitStart
{
    /// <summary>Lives beyond which the start is sought on a sample.</summary>
    private const int SampleMax = 4000;

    /// <summary>Largest variance of the scale in units of z: e^20 either way.</summary>
    private const double ScaleVarianceMax = 400;

    private static readonly double[] Shapes = [0.25, 0.5, 1, 2, 4, 8, 16];

    /// <summary>The reason for which no distribution of two parameters can be fitted, or null.</summary>
    internal static NotEstimable? Refusal(LifeArrays lives)
    {
        if (ScaleRefusal(lives) is { } refusal) return refusal;

        // When one age lies in every life's range, the likelihood rises for ever as the law closes in on that age.
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

    /// <summary>The maximum, from the best of a range of shapes; with many lives from the maximum on a sample.</summary>
    internal static LikelihoodSearch.Peak? Peak(LikelihoodSearch search, IReadOnlyList<Life> lives)
    {
        if (lives.Count > 2 * SampleMax)
        {
            var sample = new LifeArrays(lives, lives.Count / SampleMax);
            if (sample.Failures > 50 && OfBestShape(new LikelihoodSearch(search.Law, sample)) is { } near
                && search.Maximise(near.Mu, near.Tau) is { } peak)
            {
                return peak;
            }
        }

        return OfBestShape(search);
    }

    /// <summary>Whether the maximum is the greatest: not a plateau, nor a lower hill, on the way to a degenerate law.</summary>
    internal static bool IsInterior(LikelihoodSearch search, LikelihoodSearch.Peak peak, LogCovariance covariance)
    {
        // With late entries only, survival may fall like a power of age all along: then the scale runs off to nothing.
        if (covariance.LogScale * Math.Exp(2 * peak.Tau) > ScaleVarianceMax) return false;
        if (covariance.LogShape < 0.05) return true; // the shape is known within a factor of 1.6: far shapes cannot be likelier
        var mu = peak.Mu;
        for (var tau = -LikelihoodSearch.TauLimit; tau <= LikelihoodSearch.TauLimit; tau += 1)
        {
            var there = search.Maximise(new LikelihoodPath.FixedShape(tau), mu);
            if (there.Value > peak.Point.Value - (Math.Abs(tau) == LikelihoodSearch.TauLimit ? 1e-6 : -1e-6)) return false;
            if (there.IsSettled) mu = there.X;
        }

        return true;
    }

    /// <summary>
    /// The maximum from the first start that leads to one, starts in order of their likelihood. For each shape the search for mu begins at
    /// the mean age, and where the last shape's ended: with late entries it can run off to nothing for one shape and not for the next.
    /// </summary>
    private static LikelihoodSearch.Peak? OfBestShape(LikelihoodSearch search)
    {
        var starts = new List<LikelihoodSearch.PathPeak>();
        var mean = search.Lives.MeanLogAge();
        var last = mean;
        foreach (var shape in Shapes)
        {
            var path = new LikelihoodPath.FixedShape(Math.Log(shape));
            var best = search.Maximise(path, mean);
            if (last != mean && search.Maximise(path, last) is var other && other.Value > best.Value) best = other;
            if (!double.IsFinite(best.Value)) continue;
            starts.Add(best);
            if (best.IsSettled) last = best.X;
        }

        return starts.OrderByDescending(s => s.Value)
            .Select(s => search.Maximise(s.Position.Mu, s.Position.Tau))
            .FirstOrDefault(p => p is not null);
    }
}
