using FleetTrend.Statistics.Decisions;

namespace FleetTrend.Trends.Scores;

/// <summary>Forecasts of spares held against the parts that failures then took.</summary>
internal sealed class SpareScores
{
    private const int QuarterDays = 91;

    private readonly TypeGroupInputs inputs;
    private readonly Dictionary<string, NeededParts> byMark = new(StringComparer.Ordinal);

    /// <summary>Scores the forecasts that were kept.</summary>
    public SpareScores(TypeGroupInputs inputs)
    {
        this.inputs = inputs;
        FirstDate = inputs.Forecasts.Spares.Count > 0 ? inputs.Forecasts.Spares[0].Date : null;
    }

    /// <summary>The day of the first forecast; null where nothing was kept.</summary>
    public DateOnly? FirstDate { get; }

    /// <summary>Those kept in a quarter; null where none were.</summary>
    public SpareScore? Of(Quarter quarter) => Compare(quarter, quarter);

    /// <summary>Those kept in a quarter that is over and the one before, with the verdict; null where none were.</summary>
    public SpareScore? OfTwo(Quarter quarter)
    {
        if (Compare(quarter.Previous, quarter) is not { Judged: { } judged } score || judged.Forecasts == 0
            || Kept(quarter, quarter).Any(k => k.Date.AddDays(score.JudgedDays) > inputs.AsOfDate))
        {
            return Compare(quarter.Previous, quarter);
        }

        var once = FalseVerdicts.SparesAtOnce(inputs) / 2;
        List<(string Kind, KeptHorizon Horizon, int Needed)> told = [.. Told(quarter.Previous, quarter, score.JudgedDays).Where(t => t.Needed is not null)
            .Select(t => (t.Spare.Kind, t.Horizon, t.Needed!.Value))];
        var (lower, upper) = ForecastSum.Limits(told.Select(t => (t.Kind, t.Horizon.Mean, t.Horizon.Variance)), 1 - once);
        var mostOutside = ForecastSum.MostOutside(told.Select(t => t.Kind), inputs.Parameters.Confidence, 1 - once);
        return score with { IsOff = judged.Needed < lower || judged.Needed > upper || judged.Forecasts - judged.Held > mostOutside };
    }

    private SpareScore? Compare(Quarter first, Quarter last)
    {
        if (Kept(first, last) is not { Count: > 0 } kept)
            return null;
        List<int> days = [.. kept.SelectMany(k => k.Items).SelectMany(b => b.Spares).SelectMany(s => s.Horizons).Select(h => h.Days).Distinct().Order()];
        return new SpareScore
        {
            KeptDate = kept[0].Date,
            JudgedDays = days.OrderBy(d => Math.Abs(d - QuarterDays)).FirstOrDefault(),
            Horizons = [.. days.Where(d => kept[0].Date.AddDays(d) <= inputs.AsOfDate).Select(d => Score(first, last, d))],
        };
    }

    private SpareHorizonScore Score(Quarter first, Quarter last, int days)
    {
        var told = Told(first, last, days).ToList();
        var scored = told.Where(t => t.Needed is not null).ToList();
        var (lower, upper) = ForecastSum.Limits(scored.Select(t => (t.Spare.Kind, t.Horizon.Mean, t.Horizon.Variance)), inputs.Parameters.Confidence);
        return new SpareHorizonScore
        {
            Days = days,
            Forecasts = scored.Count,
            Held = scored.Count(t => t.Horizon.Lower <= t.Needed && t.Needed <= t.Horizon.Upper),
            AtLeast = told.Count - scored.Count,
            Expected = Math.Round(scored.Sum(t => t.Horizon.Mean), 6),
            Needed = scored.Sum(t => t.Needed!.Value),
            Lower = lower,
            Upper = upper,
        };
    }

    /// <summary>Forecasts for so many days that are over, with what was needed; null where they said "at least".</summary>
    private IEnumerable<(KeptSpare Spare, KeptHorizon Horizon, int? Needed)> Told(Quarter first, Quarter last, int days) =>
        from kept in Kept(first, last)
        where kept.Date.AddDays(days) <= inputs.AsOfDate
        from atBase in kept.Items
        from spare in atBase.Spares
        from horizon in spare.Horizons
        where horizon.Days == days
        select (spare, horizon, spare.IsAtLeast ? (int?)null : Needed(kept.Date, atBase, spare, days));

    private int Needed(DateOnly day, KeptBase atBase, KeptSpare spare, int days)
    {
        if (byMark.Count == 0)
        {
            foreach (var aircraft in inputs.Aircraft)
                byMark.Add(aircraft.Registration, new NeededParts(aircraft, inputs.TypeGroup));
        }

        return atBase.Aircraft.Sum(mark => byMark.TryGetValue(mark, out var parts) ? parts.Count(spare.Kind, spare.PartNumber, day, day.AddDays(days)) : 0);
    }

    private List<Kept<KeptBase>> Kept(Quarter first, Quarter last) =>
        [.. inputs.Forecasts.Spares.Where(k => k.Date >= first.StartDate && k.Date <= last.EndDate)];
}
