namespace FleetTrend.Simulations;

/// <summary>What a study found.</summary>
/// <param name="Study">The study.</param>
/// <param name="Runs">Data sets drawn.</param>
/// <param name="Intervals">Intervals among them.</param>
/// <param name="Covered">Intervals that held the truth.</param>
/// <param name="Below">Intervals that lay wholly below the truth.</param>
/// <param name="None">Data sets that gave a typed reason and no interval.</param>
internal sealed record Coverage(Study Study, int Runs, int Intervals, int Covered, int Below, int None)
{
    /// <summary>Share of intervals that held the truth.</summary>
    public double Share => Intervals == 0 ? 0 : (double)Covered / Intervals;

    /// <summary>Whether it lies between 93 and 97 percent.</summary>
    public bool IsAsStated => Share is >= 0.93 and <= 0.97;

    /// <summary>Draws the study's data sets; the seed of each follows from the study's words and the run alone.</summary>
    public static Coverage Estimate(Study study, int runs)
    {
        var count = Math.Max(50, (int)(runs * study.Share));
        var (intervals, covered, below, none) = (0, 0, 0, 0);
        Parallel.For(0, count, run =>
        {
            var random = new Random(Seed(study, run));
            var any = false;
            foreach (var (interval, truth) in study.Draw(random))
            {
                any = true;
                Interlocked.Increment(ref intervals);
                if (interval.Contains(truth))
                    Interlocked.Increment(ref covered);
                else if (interval.Upper < truth)
                    Interlocked.Increment(ref below);
            }
            if (!any)
                Interlocked.Increment(ref none);
        });
        return new Coverage(study, count, intervals, covered, below, none);
    }

    private static int Seed(Study study, int run)
    {
        var hash = 2166136261u;
        foreach (var c in $"{study.Quantity}|{study.Setting}|{run}")
            hash = (hash ^ c) * 16777619u;
        return (int)(hash & 0x7FFFFFFF);
    }
}
