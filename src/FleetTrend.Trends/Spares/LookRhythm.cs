namespace FleetTrend.Trends.Spares;

/// <summary>
/// How often locations of a kind are looked at on a type group: the median of the last gaps between looks there; the look interval where few are known.
/// </summary>
/// <param name="Hours">Flight hours from one look to the next.</param>
/// <param name="Spread">Half of what lies between the 16th and the 84th of 100 gaps, flight hours.</param>
internal sealed record LookRhythm(double Hours, double Spread)
{
    private const int LastGaps = 5;
    private const int FewestGaps = 10;

    // What is nearer is the same visit, told twice.
    private const double LeastGap = 1;
    private const double UsualSpread = 0.1;

    /// <summary>That of every kind with an exposure.</summary>
    public static IReadOnlyDictionary<string, LookRhythm> Estimate(TypeGroupInputs inputs)
    {
        var gaps = new Dictionary<string, List<double>>(StringComparer.Ordinal);
        foreach (var exposure in inputs.Present.Where(a => a.RetiredDate is null).SelectMany(a => a.Exposures))
        {
            if (exposure.TypeGroup != inputs.TypeGroup || !exposure.Kind.HasLife)
                continue;
            if (!gaps.TryGetValue(exposure.Kind.Name, out var ofKind))
                gaps.Add(exposure.Kind.Name, ofKind = []);
            var looks = exposure.LookHours;
            for (var i = Math.Max(1, looks.Count - LastGaps); i < looks.Count; i++)
            {
                if ((looks[i] - looks[i - 1]).Value is >= LeastGap and var gap)
                    ofKind.Add(gap);
            }
        }

        return gaps.ToDictionary(g => g.Key, g => Of(g.Value, inputs.Parameters.LookIntervalHoursOf(inputs.TypeGroup, g.Key)), StringComparer.Ordinal);
    }

    /// <summary>That of a kind that nobody looked at yet.</summary>
    public static LookRhythm Usual(double interval) => new(interval, UsualSpread * interval);

    private static LookRhythm Of(List<double> gaps, double interval)
    {
        if (gaps.Count < FewestGaps)
            return Usual(interval);
        gaps.Sort();
        return new LookRhythm(At(0.5), (At(0.84) - At(0.16)) / 2);

        double At(double share) => gaps[(int)(share * (gaps.Count - 1))];
    }
}
