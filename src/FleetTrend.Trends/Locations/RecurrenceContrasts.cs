using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Locations;

/// <summary>Each place where a condition came back, beside the mean of the other aircraft of the type group there.</summary>
internal static class RecurrenceContrasts
{
    /// <summary>One per place, in the order given; those whose aircraft was never watched there are left out.</summary>
    public static IReadOnlyList<RecurrenceContrast> Of(
        IReadOnlyList<RepeatLocation> repeats, IReadOnlyList<TypeGroupObservations> groups, double confidence)
    {
        var byName = groups.ToDictionary(g => g.TypeGroup, StringComparer.Ordinal);
        return [.. repeats.Select(r => Contrast(r, byName[r.TypeGroup].At(r.Location), confidence)).OfType<RecurrenceContrast>()];
    }

    private static RecurrenceContrast? Contrast(RepeatLocation repeat, LocationObservations location, double confidence)
    {
        var own = location.Aircraft.Single(a => a.Registration == repeat.Registration);
        if (own.ExposureTenths == 0)
            return null;
        var others = location.Aircraft.Where(a => a != own && a.ExposureTenths > 0).ToList();
        var (mean, method) = RecurrenceTrends.Mean(others, repeat.Condition, confidence);
        return new RecurrenceContrast
        {
            Registration = repeat.Registration,
            TypeGroup = repeat.TypeGroup,
            Location = repeat.Location,
            Condition = repeat.Condition,
            FoundHours = [.. own.Counted(repeat.Condition).Select(e => e.Found.Value).Order()],
            Watched = [.. own.Windows.Select(w => new WatchedSpan(w.From.Value, w.To.Value))],
            OthersCount = others.Count,
            OthersEvents = others.Sum(a => a.Count(repeat.Condition)),
            Others = mean is null ? [] : RecurrenceTrends.Points(mean),
            OthersWatched = mean is null ? [] : RecurrenceTrends.Watched(mean),
            Method = method,
        };
    }
}
