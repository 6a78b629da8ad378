using FleetTrend.Observations;
using FleetTrend.Observations.Looks;

namespace FleetTrend.Trends.DueLooks;

/// <summary>
/// When each aircraft is due for a look. A location is due a look interval after its last look; a part that went in counts as no look. Where nobody ever
/// looked, the hours count from the first day of the aircraft's records.
/// </summary>
public sealed class DueLookAnalysis : Analysis<DueLook>
{
    private const int MostNamed = 12;

    // Of what inspections passed over every location has to be named; a layout has some sixty.
    private const int MostPassedOverNamed = 100;

    /// <summary>Makes the analysis.</summary>
    public DueLookAnalysis()
        : base("due-looks")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(DueLook item) => new(item.Registration, Base: item.Base);

    /// <summary>What is past its interval first, the furthest past before the others; then by the day on which it is due.</summary>
    public override IEnumerable<DueLook> Order(IEnumerable<DueLook> items) => items
        .OrderBy(d => d.IsOverdue ? d.HoursToNext : 0)
        .ThenBy(d => d.DueDate ?? DateOnly.MaxValue)
        .ThenBy(d => d.HoursToNext ?? double.MaxValue)
        .ThenBy(d => d.Registration, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<DueLook> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        var utilisation = Utilisation.Estimate(inputs);
        var intervals = new Dictionary<string, double>(StringComparer.Ordinal);
        return inputs.Present.Where(a => a.RetiredDate is null && a.Looks.Count > 0).Select(a => Describe(a, IntervalOf, utilisation));

        double IntervalOf(string kind)
        {
            if (!intervals.TryGetValue(kind, out var hours))
                intervals.Add(kind, hours = inputs.Parameters.LookIntervalHoursOf(inputs.TypeGroup, kind));
            return hours;
        }
    }

    private static DueLook Describe(AircraftObservations aircraft, Func<string, double> intervalOf, Utilisation utilisation)
    {
        var alike = aircraft.Looks
            .GroupBy(l => (Interval: intervalOf(l.Kind.Name), l.LastDate, Over: l.PassedOver is { } o ? (o.Date, o.IsPossible, o.Count) : default))
            .Select(g => (Group: Together(aircraft, g.Key.Interval, [.. g]), Looks: g.ToList()))
            .OrderBy(g => g.Group.HoursToNext ?? double.MaxValue)
            .ThenBy(g => g.Group.Locations[0], StringComparer.Ordinal)
            .ToList();
        var (next, perWeek) = (alike[0].Group.HoursToNext, utilisation.HoursPerWeek(aircraft));
        return new DueLook
        {
            Registration = aircraft.Registration,
            Base = aircraft.Base,
            TypeGroup = aircraft.TypeGroup,
            LatestHours = aircraft.Latest?.Hours.Value,
            LatestDate = aircraft.Latest?.Date,
            HoursPerWeek = perWeek,
            Season = perWeek is null ? null : utilisation.Season,
            HoursToNext = next,
            DueDate = next is { } hours && perWeek is { } weekly && aircraft.Latest is { } latest ? DayAfter(latest.Date, 7 * hours / weekly) : null,
            LocationCount = aircraft.Looks.Count,
            OverdueCount = alike.Where(g => g.Group.IsOverdue).Sum(g => g.Group.Count),
            Groups = [.. alike.Select(g => g.Group)],
            Evidence =
            [
                .. alike.Where((g, i) => i == 0 || g.Group.IsOverdue)
                    .SelectMany(g => g.Looks.SelectMany(l => l.Evidence).Concat(g.Looks[0].PassedOver?.Evidence ?? []))
                    .Distinct(),
            ],
        };
    }

    private static DueGroup Together(AircraftObservations aircraft, double interval, List<LocationLooks> looks)
    {
        var (last, over) = (looks[0].LastDate, looks[0].PassedOver);
        List<Visit> since = [.. aircraft.Visits.Where(v => last is not { } day || v.Date > day)];
        var group = new DueGroup
        {
            IntervalHours = interval,
            LastLookDate = last,
            HoursSince = HoursSince(aircraft, last),
            Reason = over is not null ? over.IsPossible ? DueReason.NotExamined : DueReason.CouldNotExamine
                : since.Count > 0 ? DueReason.NotMentioned
                : DueReason.NoInspection,
            PassedOverDate = over?.Date ?? (since.Count > 0 ? since[^1].Date : null),
            PassedOverCount = over?.Count ?? since.Count,
            Count = looks.Count,
            Locations = [],
        };
        var most = group.IsOverdue && group.Reason != DueReason.NoInspection ? MostPassedOverNamed : MostNamed;
        return group with { Locations = [.. looks.Take(most).Select(l => l.Location)] };
    }

    private static double? HoursSince(AircraftObservations aircraft, DateOnly? look)
    {
        if (aircraft.Latest is not { } latest || aircraft.Hours.Days.Count == 0)
            return null;
        var start = aircraft.Hours.Days[0].Date;
        var from = look ?? (start > aircraft.WatchStartDate ? start : aircraft.WatchStartDate);
        return Math.Max(0, (latest.Hours - aircraft.Hours.On(from)!.Value).Value);
    }

    // Beyond some years no day means anything.
    private static DateOnly? DayAfter(DateOnly from, double days) => Math.Abs(days) < 3660 ? from.AddDays((int)Math.Floor(days)) : null;
}
