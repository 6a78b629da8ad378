namespace FleetTrend.Statistics.Recurrences;

/// <summary>Units of a group at risk at an age, by binary search in sorted window ends.</summary>
internal sealed class RiskShare
{
    private readonly double[] starts;
    private readonly double[] stops;

    public RiskShare(IEnumerable<RecurrenceUnit> units)
    {
        var windows = units.SelectMany(u => u.Windows).ToArray();
        starts = Array.ConvertAll(windows, w => w.Start);
        stops = Array.ConvertAll(windows, w => w.Stop);
        Array.Sort(starts);
        Array.Sort(stops);
    }

    /// <summary>Windows with start below the age, less those with stop below it.</summary>
    public int Count(double age) => Below(starts, age) - Below(stops, age);

    private static int Below(double[] sorted, double age)
    {
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] < age)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
