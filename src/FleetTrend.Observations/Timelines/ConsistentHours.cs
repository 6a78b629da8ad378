namespace FleetTrend.Observations.Timelines;

/// <summary>Which of several known hours can be true together: hours never fall, and no day has more than 24 of them.</summary>
/// <remarks>
/// The heaviest consistent set is kept, so that one wrong number spoils neither what is before nor what is after it.
/// A visit weighs two readings. Both conditions are orders (hours, and 24 h per day less hours), so the set is a heaviest
/// chain in two dimensions, found in n log n steps.
/// </remarks>
internal static class ConsistentHours
{
    private const int TenthsPerDay = 240;

    /// <summary>Splits points, one per day and ascending by day, into those kept and those that do not fit.</summary>
    public static (List<HoursPoint> Kept, List<HoursPoint> Refused) Split(IReadOnlyList<HoursPoint> points)
    {
        if (Enumerable.Range(1, Math.Max(0, points.Count - 1)).All(i => Follows(points[i - 1], points[i])))
            return ([.. points], []);

        var kept = HeaviestChain(points);
        return ([.. points.Where((_, i) => kept.Contains(i))], [.. points.Where((_, i) => !kept.Contains(i))]);
    }

    /// <summary>True where the later point can follow the earlier one.</summary>
    public static bool Follows(HoursPoint earlier, HoursPoint later) =>
        later.Hours >= earlier.Hours && !TooFast(earlier, later);

    /// <summary>True where more than 24 h a day lie between the two.</summary>
    public static bool TooFast(HoursPoint earlier, HoursPoint later) =>
        later.Hours.Tenths - earlier.Hours.Tenths > TenthsPerDay * (long)(later.Date.DayNumber - earlier.Date.DayNumber);

    private static HashSet<int> HeaviestChain(IReadOnlyList<HoursPoint> points)
    {
        long Room(int i) => (TenthsPerDay * (long)points[i].Date.DayNumber) - points[i].Hours.Tenths;
        var ranks = points.Select((_, i) => Room(i)).Distinct().Order().Select((room, rank) => (room, rank)).ToDictionary(p => p.room, p => p.rank);
        var order = Enumerable.Range(0, points.Count).OrderBy(i => points[i].Hours).ThenBy(Room);
        var best = new (int Weight, int Last)[ranks.Count + 1];
        Array.Fill(best, (0, -1));
        var before = new int[points.Count];
        var end = (Weight: 0, Last: -1);
        foreach (var i in order)
        {
            var chain = (Weight: 0, Last: -1);
            for (var r = ranks[Room(i)] + 1; r > 0; r -= r & -r)
            {
                if (best[r].Weight > chain.Weight)
                    chain = best[r];
            }

            before[i] = chain.Last;
            var longer = (Weight: chain.Weight + (points[i].IsVisit ? 2 : 1), Last: i);
            for (var r = ranks[Room(i)] + 1; r < best.Length; r += r & -r)
            {
                if (longer.Weight > best[r].Weight)
                    best[r] = longer;
            }

            if (longer.Weight > end.Weight)
                end = longer;
        }

        var kept = new HashSet<int>();
        for (var i = end.Last; i >= 0; i = before[i])
            kept.Add(i);
        return kept;
    }
}
