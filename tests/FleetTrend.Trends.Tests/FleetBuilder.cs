using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Looks;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Tests;

/// <summary>Builds the observations of one aircraft for a test, a line per fact.</summary>
internal sealed class FleetBuilder(string registration, string atBase = "north", string typeGroup = "four", double hoursAtStart = 0)
{
    public static readonly DateOnly Start = new(2024, 1, 1);
    public static readonly DateTimeOffset AsOf = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private readonly List<LocationExposure> exposures = [];
    private readonly List<LocationEvent> events = [];
    private readonly List<ObservedLife> lives = [];
    private readonly List<LocationLooks> looks = [];
    private readonly List<Visit> visits = [];
    private int records;

    /// <summary>A location watched over (from, to], looked at so often, evenly from end to end, or at given hours.</summary>
    public FleetBuilder Watched(
        string location, string kind, double from, double to, string? group = null, string? segmentBase = null, int looks = 2, double[]? at = null)
    {
        exposures.Add(new LocationExposure
        {
            Registration = registration,
            Location = location,
            Kind = ShippedKinds.Get(kind),
            TypeGroup = group ?? typeGroup,
            Base = segmentBase ?? atBase,
            From = Hours.From(from),
            To = Hours.From(to),
            LookHours =
            [
                .. at?.Select(Hours.From) ?? Enumerable.Range(0, looks).Select(i => looks == 1 ? to : from + (to - from) * i / (looks - 1))
                    .Select(h => Hours.FromTenths((long)Math.Round(10 * h))),
            ],
            Evidence = [Key()],
        });
        return this;
    }

    /// <summary>An event found at these hours; an hour is a day.</summary>
    public FleetBuilder Found(
        string location, string kind, double hours, Condition condition = Condition.Crack, int ordinal = 1, ActionKind? since = null,
        double? sinceHours = null, ActionKind? closedBy = null, bool atEntry = false, string? group = null, bool open = false, double? renewed = null,
        (ActionKind Kind, double Hours)[]? actions = null, (double Hours, double Millimetres)[]? sizes = null, double? lastGood = null,
            double? closedAt = null, double? nextRenewed = null)
    {
        events.Add(new LocationEvent
        {
            Registration = registration,
            Location = location,
            Kind = ShippedKinds.Get(kind),
            Condition = condition,
            TypeGroup = group ?? typeGroup,
            Base = atBase,
            LastGood = atEntry ? null : Hours.From(lastGood ?? Math.Max(0, hours - 50)),
            Found = Hours.From(hours),
            FoundDate = DayAt(hours),
            PresentAtEntry = atEntry,
            SinceAction = since,
            SinceActionHours = sinceHours is { } h ? Hours.From(h) : null,
            Ordinal = ordinal,
            ClosedBy = closedBy,
            ClosedDate = open ? null : DayAt(closedAt ?? hours),
            NextRenewedAt = nextRenewed is { } next ? Hours.From(next) : null,
            Actions = [.. (actions ?? (closedAt is { } at ? [(closedBy!.Value, at)] : [])).Select(a => new EventAction(a.Kind, DayAt(a.Hours),
                Hours.From(a.Hours)))],
            RenewedAt = renewed is { } r ? Hours.From(r) : null,
            Sizes = [.. (sizes ?? []).Select(s => new SizeSeen(Hours.From(s.Hours), s.Millimetres))],
            Evidence = [Key()],
        });
        return this;
    }

    /// <summary>A life: entry, last good and first bad ages.</summary>
    public FleetBuilder Life(
        string location, string kind, double lastGood, double? firstBad = null, double entry = 0, LifeExclusion? exclusion = null,
        int startDay = 0, double? ageNow = null, string? partNumber = null, string? serialNumber = null)
    {
        lives.Add(new ObservedLife
        {
            Registration = registration,
            Location = location,
            Kind = ShippedKinds.Get(kind),
            TypeGroup = typeGroup,
            Base = atBase,
            Ending = firstBad is null ? LifeEnding.InService : LifeEnding.Failed,
            Exclusion = exclusion,
            Entry = Hours.From(entry),
            LastGood = Hours.From(lastGood),
            FirstBad = firstBad is { } bad ? Hours.From(bad) : null,
            Failure = firstBad is null ? null : Condition.LeakTrace,
            StartDate = Start.AddDays(startDay),
            AgeNow = ageNow is { } now ? Hours.From(now) : null,
            PartNumber = partNumber,
            SerialNumber = serialNumber,
            Evidence = [Key()],
        });
        return this;
    }

    /// <summary>Inspections at these hours; the day is the hours in days after the start.</summary>
    public FleetBuilder Visited(params double[] hours)
    {
        visits.AddRange(hours.Select(h => new Visit(Start.AddDays((int)h), Hours.From(h), [Key()])));
        return this;
    }

    /// <summary>A location of the layout, last looked at at these hours; never where there are none.</summary>
    public FleetBuilder LookedAt(string location, string kind, double? last, PassedOver? passedOver = null)
    {
        looks.Add(new LocationLooks
        {
            Location = location,
            Kind = ShippedKinds.Get(kind),
            LookCount = last is null ? 0 : 1,
            LastDate = last is { } h ? Start.AddDays((int)h) : null,
            Evidence = last is null ? [] : [Key()],
            PassedOver = passedOver,
        });
        return this;
    }

    public AircraftObservations Build(DateOnly? retired = null, HoursOnDate? latest = null, HoursOnDate? inspection = null) => new()
    {
        Registration = registration,
        Base = atBase,
        TypeGroup = typeGroup,
        RetiredDate = retired,
        Hours = new HoursByDay( // an hour a day
            [new HoursOnDate(Start, Hours.From(hoursAtStart)), new HoursOnDate(Start.AddDays(10_000), Hours.From(hoursAtStart + 10_000))]),
        Latest = latest,
        LatestInspection = inspection,
        Exposures = exposures,
        Events = events,
        Lives = lives,
        Looks = looks,
        Visits = visits,
        Problems = [],
    };

    /// <summary>Answers of an analysis on the type group of these aircraft.</summary>
    public static IReadOnlyList<T> Find<T>(Analysis<T> analysis, IReadOnlyList<AircraftObservations> aircraft, string typeGroup = "four")
        where T : notnull => Find(analysis, new TypeGroupInputs(typeGroup, aircraft, AsOf, new TrendParameters()));

    /// <summary>Answers of an analysis on a type group.</summary>
    public static IReadOnlyList<T> Find<T>(Analysis<T> analysis, TypeGroupInputs inputs)
        where T : notnull => [.. analysis.Compute(inputs).Subjects.Cast<SubjectResult<T>>().SelectMany(s => s.Items)];

    /// <summary>The same, settled by all tests of that type group.</summary>
    public static IReadOnlyList<T> Settle<T>(Analysis<T> analysis, TypeGroupInputs inputs)
        where T : notnull
    {
        var result = analysis.Compute(inputs);
        var tests = new TestFamily([result.Tests]);
        return [.. result.Subjects.Cast<SubjectResult<T>>().SelectMany(s => analysis.Settle(s.Items, tests, inputs.Parameters))];
    }

    /// <summary>Trends of these aircraft.</summary>
    public static TrendSnapshot Compute(
        IReadOnlyList<AircraftObservations> aircraft, TrendParameters parameters, DateTimeOffset asOf, string codeVersion) =>
        FleetTrends.Compute(new FleetObservations { AsOf = asOf, Aircraft = aircraft }, parameters, codeVersion);

    private DateOnly DayAt(double hours) => Start.AddDays((int)(hours - hoursAtStart));

    private RecordKey Key() => new("test", $"{registration}-{records++}", 1);
}
