namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Makes sets of lives like a given one from a fitted distribution: same entries, same ends of watch where they were seen, looks spaced like the
/// intervals that were seen. Only with that can a bootstrap repeat what the looks did to the data.
/// </summary>
/// <remarks>
/// A failed life's end of watch was not seen; it is drawn from the lives still good at least that long after entry, or else lies at its
/// own last look. Source: Efron and Tibshirani 1993, chapter 6; conditional bootstrap for censored data, Efron 1981.
/// </remarks>
internal sealed class LifeResampling
{
    private readonly LifeModel model;
    private readonly Life[] lives;
    private readonly double[] widths;
    private readonly double[] watched; // hours from entry to last look of lives still good, in order

    internal LifeResampling(LifeModel model, IReadOnlyList<Life> source)
    {
        this.model = model;
        lives = [.. source.Where(l => l.Count > 0)];
        widths = [.. lives.Where(l => l.Failed && !l.IsExact).Select(l => l.Upper - l.Lower)];
        watched = [.. lives.Where(l => !l.Failed).Select(l => l.Lower - l.Entry).Order()];
    }

    /// <summary>One set.</summary>
    internal List<Life> Draw(Random random)
    {
        var drawn = new List<Life>(lives.Length);
        foreach (var life in lives)
        {
            for (var i = 0; i < life.Count; i++) drawn.Add(Draw(life, random));
        }

        return drawn;
    }

    private Life Draw(Life like, Random random)
    {
        var age = Math.Max(like.Entry, model.AgeOfCumulativeHazard(model.CumulativeHazard(like.Entry) - Math.Log(1 - random.NextDouble())));
        var end = EndOfWatch(like, random);
        if (like.IsExact || widths.Length == 0) return age <= end && age > like.Entry ? Life.FailedAt(age, like.Entry) : Life.GoodAt(end, like.Entry);

        var (lower, upper) = (like.Entry, like.Entry);
        while (true)
        {
            (lower, upper) = (upper, upper + widths[random.Next(widths.Length)]);
            if (upper > end) return Life.GoodAt(lower, like.Entry);
            if (age <= upper) return Life.FailedBetween(lower, upper, like.Entry);
        }
    }

    private double EndOfWatch(Life like, Random random)
    {
        if (!like.Failed) return like.Lower;
        var seen = like.Upper - like.Entry;
        var from = Array.BinarySearch(watched, seen);
        if (from < 0) from = ~from;
        return like.Entry + (from < watched.Length ? watched[random.Next(from, watched.Length)] : seen);
    }
}
