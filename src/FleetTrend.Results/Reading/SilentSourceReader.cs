using FleetTrend.Store.Sources;
using FleetTrend.Trends.Silence;

namespace FleetTrend.Results.Reading;

/// <summary>Sources that have stopped sending against their own habit.</summary>
public sealed class SilentSourceReader(SourceStore sources)
{
    // A source of which nothing came for longer than that is no news any more.
    private const int HabitDays = 3 * 365;

    /// <summary>Those of a moment, by name.</summary>
    public async Task<IReadOnlyList<SilentSource>> ReadAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        var today = DateOnly.FromDateTime(asOf.UtcDateTime);
        return
        [
            .. (await sources.ReadDaysAsync(asOf.AddDays(-HabitDays), asOf, ct))
                .Select(s => (s.Source, Habit: Habit.Find(s.Days, today)))
                .Where(s => s.Habit is { IsKnown: true } habit && habit.IsSilent())
                .Select(s => new SilentSource(s.Source, s.Habit!)),
        ];
    }
}
