using FleetTrend.Observations.Lives;
using FleetTrend.Records;
using FleetTrend.Statistics.Decisions;
using FleetTrend.Trends.FailureChances;

namespace FleetTrend.Trends.Scores;

/// <summary>
/// Every look at a part since the first forecast, with the chance that it would find the part failed: from the look before, by the life distribution that
/// had been published last on a day before, for the hours flown until then. Days of looks are those on which the aircraft had flown their hours.
/// </summary>
internal sealed class ScoredLooks
{
    private readonly Dictionary<Quarter, List<ScoredChance>> looks = [];
    private readonly Dictionary<(string Kind, string? Base), int> laws = [];

    private ScoredLooks()
    {
    }

    /// <summary>Looks of a quarter.</summary>
    public IReadOnlyList<ScoredChance> In(Quarter quarter) => looks.TryGetValue(quarter, out var found) ? found : [];

    /// <summary>Looks at the lives of a type group.</summary>
    public static ScoredLooks Find(TypeGroupInputs inputs, IReadOnlyList<Kept<LifeLaw>> kept)
    {
        var found = new ScoredLooks();
        if (kept.Count == 0)
            return found;
        var ends = Ends(kept, inputs.AsOfDate).ToList();
        var byMark = inputs.Aircraft.Index().ToDictionary(a => a.Item.Registration, a => (Number: a.Index, a.Item.Hours), StringComparer.Ordinal);
        foreach (var aircraft in inputs.FollowedLives.GroupBy(l => l.Life.Registration, StringComparer.Ordinal))
        {
            var (number, hours) = byMark[aircraft.Key];
            var until = ends.ConvertAll(e => hours.On(e.Day)!.Value);
            foreach (var life in aircraft)
                found.Add(number, life, ends, until);
        }

        return found;
    }

    /// <summary>The days that part the looks: after each, another forecast or another quarter counts. The first says from when on looks count at
    /// all.</summary>
    private static IEnumerable<(DateOnly Day, Quarter Quarter, Kept<LifeLaw>? Forecast)> Ends(IReadOnlyList<Kept<LifeLaw>> kept, DateOnly asOf)
    {
        yield return (kept[0].Date, Quarter.Of(kept[0].Date), null);
        var (forecast, quarter) = (0, Quarter.Of(kept[0].Date));
        for (var day = kept[0].Date; day < asOf;)
        {
            var next = forecast + 1 < kept.Count && kept[forecast + 1].Date < quarter.EndDate ? kept[forecast + 1].Date : quarter.EndDate;
            day = next < asOf ? next : asOf;
            yield return (day, quarter, kept[forecast]);
            if (forecast + 1 < kept.Count && kept[forecast + 1].Date <= day)
                forecast++;
            if (quarter.EndDate <= day)
                quarter = quarter.Next;
        }
    }

    private void Add(int unit, FollowedLife life, List<(DateOnly Day, Quarter Quarter, Kept<LifeLaw>? Forecast)> ends, List<Hours> until)
    {
        foreach (var (good, look, failed) in life.LooksAfterHours(until[0]))
        {
            var at = life.HoursAt(look);
            var i = 1;
            while (i < ends.Count && until[i] < at)
                i++;
            if (i == ends.Count || LawOf(ends[i].Forecast!, life.Life) is not { } law)
                continue;
            if (!laws.TryGetValue((law.Kind, law.Base), out var number))
                laws.Add((law.Kind, law.Base), number = laws.Count);
            if (!looks.TryGetValue(ends[i].Quarter, out var there))
                looks.Add(ends[i].Quarter, there = []);
            there.Add(ScoredChance.From(unit, number, law.Estimate!, good.Value, (look - good).Value, failed));
        }
    }

    private static LifeLaw? LawOf(Kept<LifeLaw> forecast, ObservedLife life)
    {
        LifeLaw? general = null;
        foreach (var law in forecast.Items)
        {
            if (law.Kind != life.Kind.Name)
                continue;
            if (law.Base == life.Base)
                return law;
            if (law.Base is null)
                general = law;
        }

        return general;
    }
}
