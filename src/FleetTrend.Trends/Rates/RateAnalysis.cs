using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Rates;

/// <summary>Rates per location, per kind and per type group.</summary>
public sealed class RateAnalysis : Analysis<RateTrend>
{
    /// <summary>Makes the analysis.</summary>
    public RateAnalysis()
        : base("rates")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(RateTrend item) => new(Location: item.Location, Kind: item.Kind);

    /// <inheritdoc/>
    public override Headline HeadlineOf(RateTrend item) => Headline.From(item.Condition.ToString(), item.Rate);

    /// <inheritdoc/>
    protected override IEnumerable<RateTrend> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        // The group as a whole, then its kinds, then its locations.
        var (group, confidence) = (inputs.Observations, inputs.Parameters.Confidence);
        var kinds = group.Locations.GroupBy(l => l.Kind.Name, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).ToList();
        foreach (var condition in ConditionsOf(group.Locations))
            yield return Rate(group.TypeGroup, null, null, condition, [.. group.Where(condition)], confidence);
        foreach (var kind in kinds)
        {
            List<LocationObservations> locations = [.. kind];
            foreach (var condition in ConditionsOf(locations))
                yield return Rate(group.TypeGroup, locations[0].Kind, null, condition, locations, confidence);
        }
        foreach (var location in group.Locations)
        {
            foreach (var condition in ConditionsOf([location]))
                yield return Rate(group.TypeGroup, location.Kind, location.Location, condition, [location], confidence);
        }
    }

    private static IEnumerable<Condition> ConditionsOf(IReadOnlyList<LocationObservations> locations) =>
        locations.SelectMany(l => l.Conditions.Union(l.Kind.Watched)).Distinct().Order();

    private static RateTrend Rate(
        string typeGroup, LocationKind? kind, string? location, Condition condition, List<LocationObservations> locations, double confidence)
    {
        var counted = locations.SelectMany(l => l.Aircraft).SelectMany(a => a.Counted(condition)).ToList();
        var inNoRate = locations.SelectMany(l => l.Aircraft)
            .SelectMany(a => a.Events.Where(e => e.Condition == condition && !a.IsCounted(e))).ToList();
        return new RateTrend
        {
            TypeGroup = typeGroup,
            Kind = kind?.Name,
            KindTitle = kind?.Title,
            Location = location,
            Condition = condition,
            Rate = Figures.Rate(
                [.. locations.SelectMany(l => l.Aircraft).GroupBy(a => a.Registration, StringComparer.Ordinal)
                    .OrderBy(g => g.Key, StringComparer.Ordinal)
                    .Select(g => (g.Sum(a => a.Count(condition)), g.Sum(a => a.ExposureTenths)))],
                confidence,
                location is null ? Figures.PerThousandLocationHours : Figures.PerThousandHours),
            AircraftCount = locations.SelectMany(l => l.Aircraft).Where(a => a.ExposureTenths > 0).Select(a => a.Registration)
                .Distinct(StringComparer.Ordinal).Count(),
            PresentAtEntryCount = inNoRate.Count(e => e.PresentAtEntry),
            NotWatchedCount = inNoRate.Count(e => !e.PresentAtEntry),
            RepeatCount = counted.Count(e => e.SinceAction is not null),
            Aircraft = location is null ? [] :
            [
                .. locations[0].Aircraft.Select(a => new AircraftEvents(a.Registration, a.Count(condition), a.ExposureHours)).Where(a => a.Events > 0)
                    .OrderByDescending(a => a.Events).ThenBy(a => a.Hours).ThenBy(a => a.Registration, StringComparer.Ordinal),
            ],
        };
    }
}
