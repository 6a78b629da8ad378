using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Records;
using FleetTrend.Trends.Spares;

namespace FleetTrend.Trends.Scores;

/// <summary>
/// How many parts failures took on an aircraft from a day on, counted as a forecast of spares counts: what was found failed until the end, and what
/// had been by the
/// day and waited; none where it was repaired, and with it the good sisters that went out on the same day.
/// </summary>
internal sealed class NeededParts
{
    private readonly AircraftObservations aircraft;
    private readonly Dictionary<string, List<List<ObservedLife>>> byKind;

    /// <summary>Sorts the lives of an aircraft.</summary>
    public NeededParts(AircraftObservations aircraft, string typeGroup)
    {
        this.aircraft = aircraft;
        byKind = aircraft.Lives.Where(l => l.TypeGroup == typeGroup).GroupBy(l => l.Kind.Name, StringComparer.Ordinal).ToDictionary(
            k => k.Key,
            k => k.GroupBy(l => l.Location, StringComparer.Ordinal)
                .Select(g => g.OrderBy(l => l.StartDate).ThenBy(l => l.Ending == LifeEnding.InService).ToList()).ToList(),
            StringComparer.Ordinal);
    }

    /// <summary>Parts of a kind and number that were needed after a day, until another.</summary>
    public int Count(string kind, string? partNumber, DateOnly after, DateOnly until)
    {
        if (!byKind.TryGetValue(kind, out var places) || aircraft.Hours.On(until) is not { } end)
            return 0;
        var needed = 0;
        var days = new Dictionary<DateOnly, (bool Failed, int Good)>();
        foreach (var lives in places)
        {
            var first = lives.FindLastIndex(l => l.StartDate <= after);
            if (first < 0 || lives[first].PartNumber != partNumber)
                continue;
            for (var i = first; i < lives.Count; i++)
            {
                var isFailed = lives[i].FirstBad is { } bad && FoundAt(lives[i], bad) <= end;
                if (i + 1 < lives.Count && lives[i + 1] is { HasStart: true, StartDate: var day })
                {
                    var (failed, good) = days.GetValueOrDefault(day);
                    days[day] = isFailed ? (true, good) : lives[i].FirstBad is null ? (failed, good + 1) : (failed, good);
                    needed += isFailed ? 1 : 0;
                }
                else if (isFailed && !PartsPerFailure.IsRepaired(aircraft, lives[i]))
                {
                    needed++;
                }
            }
        }

        return needed + days.Values.Where(d => d.Failed).Sum(d => d.Good);
    }

    private Hours FoundAt(ObservedLife life, Hours bad) => (aircraft.Hours.On(life.StartDate) ?? Hours.Zero) + (bad - life.Entry);
}
