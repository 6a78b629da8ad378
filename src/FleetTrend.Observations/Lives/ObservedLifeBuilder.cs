using FleetTrend.Observations.Timelines;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Lives;

/// <summary>Builds one <see cref="ObservedLife"/> while the days of its location pass.</summary>
internal sealed class ObservedLifeBuilder
{
    private readonly List<(Hours Age, IReadOnlyList<RecordKey> Keys)> goods = [];
    private readonly List<RecordKey> ends = [];
    private readonly Hours? startHours;
    private readonly Hours? startAge;
    private readonly IReadOnlyList<RecordKey> startKeys = [];
    private IReadOnlyList<RecordKey> lastGoodKeys = [];
    private Hours? entry;
    private DateOnly? startDate;
    private Hours? firstBad;
    private Condition? failure;
    private bool failedBeforeEntry;

    /// <summary>A life whose start is not recorded.</summary>
    public ObservedLifeBuilder()
    {
    }

    /// <summary>A life from its renewal on; it is under observation from there where the renewal was watched.</summary>
    public ObservedLifeBuilder(LocationDay day, Renewal renewal, string? partNumber, bool isWatched)
    {
        HasStart = true;
        startHours = day.Hours;
        startAge = renewal.PartHours;
        SerialNumber = renewal.SerialNumber;
        PartNumber = partNumber;
        startKeys = renewal.Keys;
        if (isWatched)
        {
            startDate = day.Date;
            entry = startAge;
        }
    }

    public bool HasStart { get; }

    public string? SerialNumber { get; }

    public string? PartNumber { get; }

    /// <summary>True once a failing condition was found; the life is over then, even where the part is kept.</summary>
    public bool HasFailed { get; private set; }

    /// <summary>True where anything watched is known of it.</summary>
    public bool IsWatched => startDate is not null;

    private Hours? AgeAt(Hours hours) =>
        startAge is { } age && startHours is { } start ? age + (hours > start ? hours - start : Hours.Zero) : null;

    public void SeeGood(LocationDay day, IReadOnlyList<RecordKey> keys)
    {
        startDate ??= day.Date;
        lastGoodKeys = keys;
        if (AgeAt(day.Hours) is { } age)
        {
            entry ??= age;
            goods.Add((age, keys));
        }
    }

    /// <summary>The first bad look; before anything good is known of it, it had failed before it came under observation.</summary>
    public void Fail(LocationDay day, bool isWatched, Condition? condition, IEnumerable<RecordKey> keys)
    {
        if (isWatched)
            startDate ??= day.Date;
        HasFailed = true;
        failure = condition;
        failedBeforeEntry = entry is null;
        firstBad = AgeAt(day.Hours);
        ends.AddRange(keys);
    }

    /// <summary>It came out.</summary>
    public void TakeOut(LocationDay day, IEnumerable<RecordKey> keys)
    {
        startDate ??= day.Date;
        ends.AddRange(keys);
    }

    public ObservedLife Build(LocationTimeline timeline, AircraftDescription aircraft, LifeEnding ending, Hours? latestHours)
    {
        var exclusion = Exclusion();
        var from = entry ?? Hours.Zero;
        var lastGood = goods.LastOrDefault(g => !HasFailed || g.Age < firstBad);
        var goodUntil = lastGood.Keys is null ? from : lastGood.Age;
        var date = startDate ?? aircraft.WatchStartDate;
        var ageNow = ending == LifeEnding.InService && latestHours is { } latest ? AgeAt(latest) : null;
        return new ObservedLife
        {
            Registration = aircraft.Registration,
            Location = timeline.Location,
            Kind = timeline.Kind,
            TypeGroup = aircraft.On(date).TypeGroup,
            Base = aircraft.On(date).Base,
            Ending = ending,
            Exclusion = exclusion,
            Entry = from,
            LastGood = goodUntil,
            FirstBad = HasFailed ? firstBad : null,
            Failure = failure,
            SerialNumber = SerialNumber,
            PartNumber = PartNumber,
            HasStart = HasStart,
            StartDate = date,
            AgeNow = ageNow,
            Evidence = [.. startKeys.Concat(lastGood.Keys ?? lastGoodKeys).Concat(ends).Distinct()],
        };
    }

    private LifeExclusion? Exclusion()
    {
        if (startAge is null)
            return LifeExclusion.AgeUnknown;
        if (HasFailed)
            return failedBeforeEntry ? LifeExclusion.FailedBeforeEntry : firstBad <= entry ? LifeExclusion.NoHours : null;
        return goods.Count == 0 ? LifeExclusion.NeverExamined : null;
    }
}
