using FleetTrend.Trends.Groups;
using FleetTrend.Trends.Recurrences;
using FleetTrend.Trends.Repeats;

namespace FleetTrend.Trends.RecurrenceContrasts;

/// <summary>
/// Of each base, the place where a condition came back most often, beside the mean of the other aircraft of the type group there: the one
/// that a report of that base shows.
/// </summary>
public sealed class RecurrenceContrastAnalysis : Analysis<RecurrenceContrast>
{
    /// <summary>Makes the analysis.</summary>
    public RecurrenceContrastAnalysis()
        : base("recurrence-contrasts")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(RecurrenceContrast item) => new(Registration: item.Registration, Location: item.Location);

    /// <inheritdoc/>
    protected override IEnumerable<RecurrenceContrast> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var present = inputs.Present.Where(a => a.RetiredDate is null).ToDictionary(a => a.Registration, a => a.Base, StringComparer.Ordinal);
        return inputs.Repeats
            .Where(r => present.ContainsKey(r.Registration))
            .GroupBy(r => present[r.Registration], StringComparer.Ordinal)
            .Select(g => g
                .Select(r => Contrast(r, inputs.Observations.At(r.Location), inputs.Parameters.Confidence))
                .FirstOrDefault(c => c is { OthersCount: > 0 }))
            .OfType<RecurrenceContrast>()
            .OrderBy(c => c.Registration, StringComparer.Ordinal);
    }

    private static RecurrenceContrast? Contrast(RepeatLocation repeat, LocationObservations location, double confidence)
    {
        var own = location.Aircraft.Single(a => a.Registration == repeat.Registration);
        if (own.ExposureTenths == 0)
            return null;
        var others = location.Aircraft.Where(a => a != own && a.ExposureTenths > 0).ToList();
        var (mean, method) = RecurrenceAnalysis.Mean(others, repeat.Condition, confidence);
        return new RecurrenceContrast
        {
            Registration = repeat.Registration,
            TypeGroup = repeat.TypeGroup,
            Location = repeat.Location,
            Condition = repeat.Condition,
            PresentAtEntryCount = own.Events.Count(e => e.Condition == repeat.Condition && e.PresentAtEntry),
            NotWatchedCount = own.Events.Count(e => e.Condition == repeat.Condition && !e.PresentAtEntry && !own.IsCounted(e)),
            FoundHours = [.. own.Counted(repeat.Condition).Select(e => e.Found.Value).Order()],
            Watched = [.. own.Windows.Select(w => new WatchedSpan(w.From.Value, w.To.Value))],
            OthersCount = others.Count,
            OthersEvents = others.Sum(a => a.Count(repeat.Condition)),
            Others = mean is null ? [] : RecurrenceAnalysis.Points(mean),
            OthersWatched = mean is null ? [] : RecurrenceAnalysis.Watched(mean),
            Method = method,
        };
    }
}
