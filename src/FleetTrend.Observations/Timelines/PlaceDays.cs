namespace FleetTrend.Observations.Timelines;

/// <summary>The days of one location as they are gathered, ascending. Most have the line of one card and nothing else.</summary>
internal sealed class PlaceDays
{
    private readonly List<(DateOnly Date, LocationDay? Alone, Spot? Spot)> days = [];

    /// <summary>The day that was told first, in the order of the telling.</summary>
    public DateOnly FirstTold { get; private set; }

    /// <summary>A card's line of the day of that card, on which nothing else need be recorded.</summary>
    public void Examine(LocationDay alone)
    {
        var index = Find(alone.Date);
        if (index >= 0)
            SpotAt(index).Examined.AddRange(alone.Look!.Keys);
        else
            Insert(~index, (alone.Date, alone, null));
    }

    /// <summary>All that is recorded of a day, for more to be added.</summary>
    public Spot At(DateOnly date)
    {
        var index = Find(date);
        if (index >= 0)
            return SpotAt(index);
        var spot = new Spot();
        Insert(~index, (date, null, spot));
        return spot;
    }

    public IReadOnlyList<LocationDay> Build(Func<DateOnly, Spot, LocationDay> day)
    {
        var built = new LocationDay[days.Count];
        for (var i = 0; i < built.Length; i++)
            built[i] = days[i].Alone ?? day(days[i].Date, days[i].Spot!);
        return built;
    }

    private Spot SpotAt(int index)
    {
        if (days[index] is { Alone: { } alone } day)
        {
            var spot = new Spot();
            spot.Examined.AddRange(alone.Look!.Keys);
            days[index] = (day.Date, null, spot);
        }

        return days[index].Spot!;
    }

    private void Insert(int index, (DateOnly Date, LocationDay? Alone, Spot? Spot) day)
    {
        if (days.Count == 0)
            FirstTold = day.Date;
        days.Insert(index, day);
    }

    /// <summary>Index of a day, or the complement of where it belongs: nearly always at the end, since records come by date.</summary>
    private int Find(DateOnly date)
    {
        if (days.Count == 0 || days[^1].Date < date)
            return ~days.Count;
        var (low, high) = (0, days.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = days[middle].Date < date ? (middle + 1, high) : (low, middle);
        }

        return low < days.Count && days[low].Date == date ? low : ~low;
    }
}
