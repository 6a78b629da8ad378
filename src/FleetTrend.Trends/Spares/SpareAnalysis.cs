using FleetTrend.Observations.Lives;
using FleetTrend.Statistics.Decisions;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.DueLooks;

namespace FleetTrend.Trends.Spares;

/// <summary>
/// How many spares each base will need: of the parts in service by their ages, the fitted lives of their like and what their aircraft fly. A part that fails is
/// found at its next look and renewed there, and what is renewed may fail again; parts that wait for a replacement need one for certain.
/// </summary>
public sealed class SpareAnalysis : Analysis<SpareNeed>
{
    private const int YearDays = 365;

    // An aircraft of which nothing came for longer has stopped flying or sending: its hours since are not foreseen.
    private const int MostDaysSince = 13 * 7;

    /// <summary>Makes the analysis.</summary>
    public SpareAnalysis()
        : base("spares")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(SpareNeed item) => new(Kind: item.Kinds[0], Base: item.Base);

    /// <inheritdoc/>
    public override Headline? HeadlineOf(SpareNeed item)
    {
        if (item.Horizons.Count == 0)
            return null;
        var middle = item.Horizons[item.Horizons.Count / 2];
        var interval = item.IntervalOf(middle);
        return new Headline(item.PartNumber ?? "", middle.Mean, interval.Lower, interval.Upper, item.Failures);
    }

    /// <summary>
    /// A part number that several type groups need at a base stands once, with what they need together. What falls short comes first, the soonest before the
    /// others; then by how many are needed.
    /// </summary>
    public override IEnumerable<SpareNeed> Order(IEnumerable<SpareNeed> items) => items
        .GroupBy(n => n.PartNumber is null ? (n.Base, n.TypeGroups[0], n.Kinds[0]) : (n.Base, "", n.PartNumber))
        .Select(g => g.Aggregate((a, b) => a.With(b)))
        .Select(n => (Need: n, n.Shortage))
        .OrderBy(n => n.Shortage?.Horizon.Days ?? int.MaxValue)
        .ThenByDescending(n => n.Shortage?.Missing ?? 0)
        .ThenByDescending(n => n.Need.Horizons is [.., var last] ? last.Mean : -1)
        .ThenBy(n => n.Need.Base, StringComparer.Ordinal).ThenBy(n => n.Need.Kinds[0], StringComparer.Ordinal)
        .ThenBy(n => n.Need.TypeGroups[0], StringComparer.Ordinal).ThenBy(n => n.Need.PartNumber, StringComparer.Ordinal)
        .Select(n => n.Need);

    /// <inheritdoc/>
    protected override IEnumerable<SpareNeed> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var (used, laws) = (SpareUse.Count(inputs), inputs.LifeLaws);
        var (partsPerFailure, rhythms) = (PartsPerFailure.Count(inputs), LookRhythm.Estimate(inputs));
        var flights = new Flights(inputs, Utilisation.Estimate(inputs));
        return SparePlace.Find(inputs).Select(place =>
        {
            var law = laws.Of(place.Kind, place.Base)?.Fit;
            var each = partsPerFailure.GetValueOrDefault(place.Kind, PartsPerFailure.One);
            var interval = inputs.Parameters.LookIntervalHoursOf(inputs.TypeGroup, place.Kind);
            var rhythm = rhythms.GetValueOrDefault(place.Kind, LookRhythm.Usual(interval));
            List<UnitInUse> units = law is null ? [] : [.. place.Aircraft.Select(a => flights.ToUnit(a, rhythm)).OfType<UnitInUse>()];
            var parts = units.Sum(u => u.Parts.Count);
            return new SpareNeed
            {
                TypeGroups = [inputs.TypeGroup],
                Kinds = [place.Kind],
                KindTitles = [place.Title],
                Base = place.Base,
                PartNumber = place.PartNumber,
                Parts = parts,
                AgeUnknown = law is null ? 0 : place.InService - parts,
                TooFewFailures = law is null ? place.InService : 0,
                Waiting = place.Waiting,
                UsedInYear = used.Since(place, inputs.AsOfDate.AddDays(-YearDays)),
                Failures = (int)(law?.Failures ?? 0),
                PartsPerFailure = Math.Round(each.Mean, 4),
                Horizons = law is null || parts == 0 ? [] : Foresee(inputs, units, law, each, rhythm, place.Waiting),
                ServiceLevel = inputs.Parameters.SpareServiceLevel,
                Confidence = inputs.Parameters.Confidence,
                Stock = StockOf(inputs, place, used),
            };
        });
    }

    private static SpareHorizon[] Foresee(
        TypeGroupInputs inputs, List<UnitInUse> units, LifeFit law, PartsPerFailure each, LookRhythm rhythm, int waiting) =>
    [
        .. DemandForecast.Compute(units, law, each.OutGoodAtLook(rhythm.Hours))
            .Zip(inputs.Parameters.SpareHorizonsDays, (forecast, days) => SpareHorizon.From(days, forecast.Compound(each.Shares).Plus(waiting))),
    ];

    private static SpareStock? StockOf(TypeGroupInputs inputs, SparePlace place, SpareUse used) =>
        inputs.StockCounts.FirstOrDefault(c => c.Count.Base == place.Base && c.Count.PartNumber == place.PartNumber) is { } counted
            ? new SpareStock(counted.Count.CountDate, counted.Count.Quantity, used.Since(place, counted.Count.CountDate), counted.Count.LeadTimeDays,
                counted.Key)
            : null;

    /// <summary>What the aircraft of a type group will fly.</summary>
    private sealed class Flights(TypeGroupInputs inputs, Utilisation utilisation)
    {
        private readonly double? usualPerDay = inputs.Present.Select(Utilisation.HoursPerDay).Where(h => h is not null).Average();
        private readonly List<(int Days, double Season)> horizons =
            [.. inputs.Parameters.SpareHorizonsDays.Select(days => (days, utilisation.SeasonOf(days) ?? 1))];

        /// <summary>An aircraft with its parts of known age; null where there is none, or no pace is known.</summary>
        public UnitInUse? ToUnit(SpareAircraft spare, LookRhythm rhythm)
        {
            if (spare.Aircraft.Latest is not { } latest || (Utilisation.HoursPerDay(spare.Aircraft) ?? usualPerDay) is not { } perDay)
                return null;
            List<PartInUse> parts = [.. spare.Lives.Where(l => l.AgeNow is not null).Select(l => ToPart(l, rhythm))];
            if (parts.Count == 0)
                return null;
            var since = Math.Clamp(inputs.AsOfDate.DayNumber - latest.Date.DayNumber, 0, MostDaysSince);
            return new UnitInUse(parts, [.. horizons.Select(h => Ahead(perDay * h.Season * (since + h.Days), rhythm))]);
        }

        private HoursAhead Ahead(double mean, LookRhythm rhythm) =>
            new(mean, Math.Sqrt(mean * utilisation.Spread * mean * utilisation.Spread + rhythm.Spread * rhythm.Spread));

        private static PartInUse ToPart(ObservedLife life, LookRhythm rhythm)
        {
            var (good, now) = (life.LastGood.Value, Math.Max(life.AgeNow!.Value.Value, life.LastGood.Value));
            return new PartInUse(good, now, Math.Max(0, good + rhythm.Hours - now), rhythm.Hours);
        }
    }
}
