using FleetTrend.Observations.Timelines;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Recurrences;

/// <summary>Builds one <see cref="LocationEvent"/> while the days of its location pass.</summary>
internal sealed class LocationEventBuilder
{
    private readonly List<SizeSeen> sizes = [];
    private readonly List<RecordKey> evidence = [];
    private readonly List<EventAction> actions = [];
    private readonly List<RecordKey> silentKeys = [];
    private DateOnly lastSeen;
    private bool isSilent;

    public required Condition Condition { get; init; }

    public required DateOnly FoundDate { get; init; }

    public required Hours Found { get; init; }

    public Hours? LastGood { get; init; }

    public required bool PresentAtEntry { get; set; }

    public (ActionKind Kind, Hours At)? Since { get; set; }

    public required int Ordinal { get; set; }

    /// <summary>True where the latest action left it open on purpose: deferred or monitored.</summary>
    public bool IsHeld { get; private set; }

    public ActionKind? ClosedBy { get; private set; }

    public DateOnly? ClosedDate { get; private set; }

    public Hours? RenewedAt { get; private set; }

    public Hours? NextRenewedAt { get; private set; }

    public IReadOnlyList<RecordKey> Evidence => evidence;

    /// <summary>Looks after it was found, while it was open, that examined the place and did not mention it, by date.</summary>
    public List<DateOnly> SilentLooks { get; } = [];

    /// <summary>The records of the first of those looks, and of the first after each time it was seen again.</summary>
    public IReadOnlyList<RecordKey> SilentKeys => silentKeys;

    public double LatestSize => sizes.Count == 0 ? 0 : sizes[^1].Millimetres;

    /// <summary>It was seen, first or again: a size is a measurement on it.</summary>
    public void Seen(IEnumerable<Recorded<Finding>> findings, LocationDay day)
    {
        lastSeen = day.Date;
        isSilent = false;
        foreach (var finding in findings)
        {
            evidence.Add(finding.Key);
            if (finding.Content.SizeMillimetres is { } size)
                sizes.Add(new SizeSeen(day.Hours, size));
        }
    }

    /// <summary>A look that examined the place on a day on which nobody saw it.</summary>
    public void PassOver(LocationDay day, Look look)
    {
        if (lastSeen >= day.Date)
            return;
        SilentLooks.Add(day.Date);
        if (!isSilent)
            silentKeys.AddRange(look.Keys);
        isSilent = true;
    }

    /// <summary>The day's actions left it open on purpose.</summary>
    public void Hold(LocationDay day)
    {
        IsHeld = true;
        var kinds = day.Actions.Select(a => a.Content.Kind).Distinct().Order();
        actions.AddRange(kinds.Select(kind => new EventAction(kind, day.Date, day.Hours)));
        evidence.AddRange(day.Actions.Select(a => a.Key));
    }

    /// <summary>An action of the day, or a change of parts, closed it; null where a good look did and no action is recorded.</summary>
    public void Close(ActionKind? by, LocationDay day, IEnumerable<RecordKey> keys)
    {
        ClosedBy = by;
        ClosedDate = day.Date;
        if (by is { } kind)
            actions.Add(new EventAction(kind, day.Date, day.Hours));
        evidence.AddRange(keys);
    }

    /// <summary>The place was renewed; what is open was closed by it before.</summary>
    public void Renew(LocationDay day)
    {
        RenewedAt ??= day.Hours;
        if (ClosedDate < day.Date)
            NextRenewedAt ??= day.Hours;
    }

    public LocationEvent Build(LocationTimeline timeline, string registration, string typeGroup, string atBase) => new()
    {
        Registration = registration,
        Location = timeline.Location,
        Kind = timeline.Kind,
        Condition = Condition,
        TypeGroup = typeGroup,
        Base = atBase,
        LastGood = PresentAtEntry ? null : LastGood,
        Found = Found,
        FoundDate = FoundDate,
        PresentAtEntry = PresentAtEntry,
        SinceAction = Since?.Kind,
        SinceActionHours = Since?.At,
        Ordinal = Ordinal,
        ClosedBy = ClosedBy,
        ClosedDate = ClosedDate,
        Actions = actions,
        RenewedAt = RenewedAt,
        NextRenewedAt = NextRenewedAt,
        Sizes = sizes,
        Evidence = [.. evidence.Distinct()],
    };
}
