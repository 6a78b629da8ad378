using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Actions;

namespace FleetTrend.Trends.Spares;

/// <summary>
/// How many parts a failure takes, by what was done so far on a type group: none where an action repaired it, one where it was replaced, more where sisters of
/// its kind that were good went out on the same day. One more that takes one part is counted, so that few failures settle nothing.
/// </summary>
/// <param name="Shares">Chances that a failure takes 0, 1, 2 and so on parts.</param>
/// <param name="OutGoodPerHour">Good parts that went out, with sisters or for other reasons, per hour in service.</param>
internal sealed record PartsPerFailure(IReadOnlyList<double> Shares, double OutGoodPerHour)
{
    private const double MostOutGood = 0.9;

    /// <summary>Where nothing was done yet.</summary>
    public static PartsPerFailure One { get; } = new([0, 1], 0);

    /// <summary>By kind; of a kind that is missing nothing is known.</summary>
    public static IReadOnlyDictionary<string, PartsPerFailure> Count(TypeGroupInputs inputs)
    {
        var counts = new Dictionary<string, List<int>>(StringComparer.Ordinal);
        var good = new Dictionary<string, (int Out, double Hours)>(StringComparer.Ordinal);
        foreach (var aircraft in inputs.Aircraft)
        {
            foreach (var kind in aircraft.Lives.Where(l => l.TypeGroup == inputs.TypeGroup).GroupBy(l => l.Kind.Name, StringComparer.Ordinal))
            {
                List<ObservedLife> lives = [.. kind.OrderBy(l => l.Location, StringComparer.Ordinal).ThenBy(l => l.StartDate)
                    .ThenBy(l => l.Ending == LifeEnding.InService)];
                foreach (var parts in OnAircraft(aircraft, lives))
                    Add(counts, kind.Key, parts);
                var before = good.GetValueOrDefault(kind.Key);
                good[kind.Key] = (
                    before.Out + lives.Count(l => l.Ending == LifeEnding.RemovedGood),
                    before.Hours + lives.Sum(l => ((l.FirstBad ?? l.LastGood) - l.Entry).Value));
            }
        }

        return good.ToDictionary(
            g => g.Key,
            g => new PartsPerFailure(SharesOf(counts.GetValueOrDefault(g.Key, [])), g.Value.Hours > 0 ? g.Value.Out / g.Value.Hours : 0),
            StringComparer.Ordinal);
    }

    /// <summary>Parts that a failure takes, in the mean.</summary>
    public double Mean => Shares.Select((share, parts) => parts * share).Sum();

    /// <summary>Chance that a good part goes out at a look.</summary>
    public double OutGoodAtLook(double lookHours) => Math.Min(MostOutGood, 1 - Math.Exp(-OutGoodPerHour * lookHours));

    /// <summary>Whether an action repaired a failed part and left it in place.</summary>
    public static bool IsRepaired(AircraftObservations aircraft, ObservedLife failed) =>
        LastEvent(aircraft, failed) is { ClosedBy: not null and not ActionKind.Replaced };

    /// <summary>Whether a failed part waits: what failed it is open.</summary>
    public static bool IsOpen(AircraftObservations aircraft, ObservedLife failed) => LastEvent(aircraft, failed) is { ClosedDate: null };

    private static LocationEvent? LastEvent(AircraftObservations aircraft, ObservedLife failed) =>
        aircraft.Events.LastOrDefault(e => e.Location == failed.Location && failed.Kind.Failures.Contains(e.Condition));

    private static IEnumerable<int> OnAircraft(AircraftObservations aircraft, List<ObservedLife> lives)
    {
        var days = new Dictionary<DateOnly, (int Failed, int Good)>();
        for (var i = 0; i < lives.Count; i++)
        {
            var isLast = i + 1 == lives.Count || lives[i + 1].Location != lives[i].Location;
            if (isLast)
            {
                if (lives[i].Ending == LifeEnding.Failed && IsRepaired(aircraft, lives[i]))
                    yield return 0;
                continue;
            }

            if (!lives[i + 1].HasStart)
                continue;
            var (failed, good) = days.GetValueOrDefault(lives[i + 1].StartDate);
            days[lives[i + 1].StartDate] = lives[i].Ending == LifeEnding.Failed ? (failed + 1, good) : (failed, good + 1);
        }

        foreach (var (failed, good) in days.Values.Where(d => d.Failed > 0))
        {
            yield return 1 + good;
            for (var more = 1; more < failed; more++)
                yield return 1;
        }
    }

    private static void Add(Dictionary<string, List<int>> counts, string kind, int parts)
    {
        if (!counts.TryGetValue(kind, out var byParts))
            counts.Add(kind, byParts = []);
        while (byParts.Count <= parts)
            byParts.Add(0);
        byParts[parts]++;
    }

    private static double[] SharesOf(List<int> counts)
    {
        counts = [.. counts, .. Enumerable.Repeat(0, Math.Max(0, 2 - counts.Count))];
        double whole = counts.Sum() + 1;
        return [.. counts.Select((count, parts) => (count + (parts == 1 ? 1 : 0)) / whole)];
    }
}
