using System.Globalization;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Statistics.Norms;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Positions;

/// <summary>
/// Is one cylinder or side really worse: findings and hours by position of each kind of location, every aircraft compared with itself. Type groups
/// in which the kind is at the same positions are put together.
/// </summary>
public sealed class PositionAnalysis : Analysis<PositionTrend>
{
    /// <summary>Makes the analysis.</summary>
    public PositionAnalysis()
        : base("positions")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(PositionTrend item) => new(Kind: item.Kind);

    /// <summary>
    /// Type groups with the same positions put together, settled by all comparisons: those with a difference first, the smallest p-value before the others,
    /// then the most findings.
    /// </summary>
    public override IEnumerable<PositionTrend> Order(IEnumerable<PositionTrend> items)
    {
        List<PositionTrend> shared = [.. items.GroupBy(t => t.Key).Select(g => g.Aggregate((a, b) => a.With(b)))];
        List<double> all = [.. shared.SelectMany(t => t.Positions).Select(p => p.PValue).OfType<double>()];
        var adjusted = all.Zip(FamilyWise.Holm(all)).DistinctBy(p => p.First).ToDictionary(p => p.First, p => p.Second);
        return shared.Select(t => t.Settle(adjusted))
            .OrderByDescending(t => t.Positions.Any(p => p.Finding is PositionFinding.MoreOften or PositionFinding.LessOften))
            .ThenBy(t => t.Positions.Min(p => p.AdjustedPValue) ?? double.PositiveInfinity)
            .ThenByDescending(t => t.Positions.Sum(p => p.Findings))
            .ThenBy(t => t.Kind, StringComparer.Ordinal).ThenBy(t => t.Condition).ThenBy(t => t.Sort).ThenBy(t => t.TypeGroups[0], StringComparer.Ordinal);
    }

    /// <inheritdoc/>
    protected override IEnumerable<PositionTrend> Find(TypeGroupInputs inputs, ICollection<double> tests) => inputs.Observations.Locations
        .GroupBy(l => l.Kind.Name, StringComparer.Ordinal)
        .OrderBy(g => g.Key, StringComparer.Ordinal)
        .SelectMany(kind => Find(inputs, [.. kind], PositionSort.Cylinder).Concat(Find(inputs, [.. kind], PositionSort.Side)));

    private static IEnumerable<PositionTrend> Find(TypeGroupInputs inputs, List<LocationObservations> locations, PositionSort sort)
    {
        List<(string Name, List<LocationObservations> Locations)> positions = [.. locations
            .Select(l => (Name: NameOf(l.Location, sort), Location: l))
            .Where(l => l.Name is not null)
            .GroupBy(l => l.Name!, l => l.Location, StringComparer.Ordinal)
            .OrderBy(g => g.Key.Length).ThenBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => (g.Key, g.ToList()))];
        if (positions.Count < 2)
            return [];
        var conditions = positions.SelectMany(p => p.Locations).SelectMany(l => l.Conditions).Distinct().Order();
        return conditions.Select(c => Describe(inputs, locations[0].Kind, positions, sort, c)).OfType<PositionTrend>();
    }

    private static string? NameOf(string location, PositionSort sort) => sort == PositionSort.Cylinder
        ? LocationPosition.Cylinder(location)?.ToString(CultureInfo.InvariantCulture)
        : LocationPosition.Side(location);

    private static PositionTrend? Describe(
        TypeGroupInputs inputs, LocationKind kind, List<(string Name, List<LocationObservations> Locations)> positions, PositionSort sort, Condition condition)
    {
        var aircraft = new Dictionary<string, (int[] Findings, long[] Tenths)>(StringComparer.Ordinal);
        for (var i = 0; i < positions.Count; i++)
        {
            foreach (var at in positions[i].Locations.SelectMany(l => l.Aircraft))
            {
                if (!aircraft.TryGetValue(at.Registration, out var counts))
                    aircraft.Add(at.Registration, counts = (new int[positions.Count], new long[positions.Count]));
                counts.Findings[i] += at.Count(condition);
                counts.Tenths[i] += at.ExposureTenths;
            }
        }

        if (aircraft.Values.All(a => a.Findings.All(f => f == 0)))
            return null;
        return new PositionTrend
        {
            TypeGroups = [inputs.TypeGroup],
            Kind = kind.Name,
            Title = kind.Title,
            Condition = condition,
            Sort = sort,
            Aircraft = aircraft.Values.Count(a => a.Tenths.Any(t => t > 0)),
            Confidence = inputs.Parameters.Confidence,
            Positions =
            [
                .. positions.Select((p, i) => new PositionLine
                {
                    Name = p.Name,
                    Findings = aircraft.Values.Sum(a => a.Findings[i]),
                    ExposureHours = aircraft.Values.Sum(a => a.Tenths[i]) / 10.0,
                    Aircraft = aircraft.Values.Count(a => a.Findings[i] > 0),
                }),
            ],
            WithFindings =
            [
                .. aircraft.Values.Where(a => a.Findings.Any(f => f > 0))
                    .Select(a => (a.Findings, Tenths: a.Tenths.All(t => t == a.Tenths[0]) ? null : a.Tenths))
                    .GroupBy(a => $"{string.Join(' ', a.Findings)}|{(a.Tenths is null ? "" : string.Join(' ', a.Tenths))}", StringComparer.Ordinal)
                    .OrderBy(g => g.Key, StringComparer.Ordinal)
                    .Select(g => new AircraftAtPositions(g.First().Findings, g.First().Tenths, g.Count())),
            ],
        }.Compare();
    }
}
