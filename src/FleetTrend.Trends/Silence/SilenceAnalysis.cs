using FleetTrend.Observations;

namespace FleetTrend.Trends.Silence;

/// <summary>Aircraft whose hours or inspections no longer come, against their own habit. It asks; it raises no flag.</summary>
public sealed class SilenceAnalysis : Analysis<AircraftSilence>
{
    /// <summary>Makes the analysis.</summary>
    public SilenceAnalysis()
        : base("silence")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(AircraftSilence item) => new(Registration: item.Registration, Base: item.Base);

    /// <summary>Those of which nothing comes first, the longest silent first; the same order for the same answers.</summary>
    public override IEnumerable<AircraftSilence> Order(IEnumerable<AircraftSilence> items) => items
        .OrderBy(s => s.HoursStillCome).ThenByDescending(s => s.DaysSince).ThenBy(s => s.Registration, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<AircraftSilence> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        List<(AircraftObservations Aircraft, Habit? Hours, Habit? Inspections)> flying =
        [
            .. inputs.Present.Where(a => a.RetiredDate is null)
                .Select(a => (a, Habit.Find(DaysWithHours(a), inputs.AsOfDate), Habit.Find([.. a.Visits.Select(v => v.Date)], inputs.AsOfDate))),
        ];
        var (ofHours, ofInspections) = (Usual(flying.Select(f => f.Hours)), Usual(flying.Select(f => f.Inspections)));
        foreach (var (aircraft, hours, inspections) in flying)
        {
            if (IsSilent(aircraft, hours, ofHours, inputs.AsOfDate))
                yield return Describe(inputs, aircraft, hours, ofHours, hoursStillCome: false);
            else if (IsSilent(aircraft, inspections, ofInspections, inputs.AsOfDate))
                yield return Describe(inputs, aircraft, inspections, ofInspections, hoursStillCome: true);
        }
    }

    private static bool IsSilent(AircraftObservations aircraft, Habit? habit, int? usual, DateOnly today) =>
        (habit ?? Never(aircraft, today)).IsSilent(usual);

    // Of which nothing ever came: silent since its records are complete.
    private static Habit Never(AircraftObservations aircraft, DateOnly today) =>
        new(aircraft.WatchStartDate, Math.Max(0, today.DayNumber - aircraft.WatchStartDate.DayNumber), 0, 0);

    private static AircraftSilence Describe(TypeGroupInputs inputs, AircraftObservations aircraft, Habit? habit, int? usual, bool hoursStillCome) => new()
    {
        Registration = aircraft.Registration,
        Base = aircraft.Base,
        TypeGroup = aircraft.TypeGroup,
        HoursStillCome = hoursStillCome,
        LastDate = habit?.LastDate,
        DaysSince = (habit ?? Never(aircraft, inputs.AsOfDate)).DaysSince,
        LongestGapDays = habit is null ? usual : habit.LongestUsual(usual),
        IsOwnGap = habit is { IsKnown: true },
        Evidence = aircraft.Visits is [.., var last] ? last.Evidence : aircraft.DescribedBy,
    };

    private static List<DateOnly> DaysWithHours(AircraftObservations aircraft) => [.. aircraft.Hours.Days.Select(d => d.Date)];

    /// <summary>The longest gap of half of those whose habit is known, days.</summary>
    private static int? Usual(IEnumerable<Habit?> habits)
    {
        List<int> longest = [.. habits.OfType<Habit>().Where(h => h.IsKnown).Select(h => h.LongestGapDays).Order()];
        return longest.Count == 0 ? null : longest[longest.Count / 2];
    }
}
