using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Timelines;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Words;

namespace FleetTrend.Observations.Recurrences;

/// <summary>Events of one location (rules 1, 5 and 6): each crack, leak and so on once, however often it was seen.</summary>
/// <remarks>
/// Of n findings of a condition at one look, as many as there are open events of that condition are seen again and the rest
/// are new, unless the source links them or a person has merged them. A closing action, a removal or a renewal closes what is open; a later good look
/// closes what no action was recorded for, and what was deferred or monitored stays open.
/// </remarks>
internal sealed class LocationEvents
{
    private readonly LocationTimeline timeline;
    private readonly AircraftRecords records;
    private readonly SameEvent same;
    private readonly List<LocationEventBuilder> all = [];
    private readonly List<LocationEventBuilder> open = [];
    private readonly Dictionary<(string Source, string Id), LocationEventBuilder> byName = [];
    private readonly Dictionary<Condition, int> ordinals = [];
    private readonly Dictionary<Condition, (ActionKind Kind, Hours At)> closings = [];

    /// <summary>Hours since which the place is watched, then of every look: what a later look finds was not found at these.</summary>
    private readonly List<Hours> marks = [];

    private LocationEvents(LocationTimeline timeline, AircraftRecords records)
    {
        this.timeline = timeline;
        this.records = records;
        same = new SameEvent([.. timeline.Days.Where(d => d.Look is { IsGood: false }).SelectMany(d => d.Look!.Defects)], records.Merges);
    }

    public static IEnumerable<LocationEvent> Build(LocationTimeline timeline, AircraftRecords records, IReadOnlyList<LocationExposure> exposures)
    {
        var events = new LocationEvents(timeline, records);
        var watching = false;
        foreach (var day in timeline.Days)
        {
            if (!watching && day.Date >= records.Description.WatchStartDate)
            {
                events.BeginWatch();
                watching = true;
            }

            events.Pass(day);
        }

        if (!watching)
            events.BeginWatch();
        events.all.ForEach(events.ListNotMentioned);
        return events.all.Select(e => events.Build(e, exposures));
    }

    /// <summary>What came before the watch is no event; what is open when it starts was present at entry.</summary>
    private void BeginWatch()
    {
        all.RemoveAll(e => !open.Contains(e));
        marks.Clear();
        closings.Clear();
        ordinals.Clear();
        foreach (var e in open)
        {
            e.PresentAtEntry = true;
            e.Since = null;
            e.Ordinal = NextOrdinal(e.Condition);
        }
    }

    private void Pass(LocationDay day)
    {
        if (day.Look is { } look)
        {
            if (look.IsGood)
                CloseUnrecorded(day, look);
            else
                See(day, look);
            PassOver(day, look);
            marks.Add(day.Hours);
        }

        ListTakenOutGood(day);
        Act(day);
        if (day.Renews)
            Renew(day);
    }

    private void See(LocationDay day, Look look)
    {
        var sightings = look.Defects.GroupBy(f => same.NameOf(f.Key)).Select(g => g.ToList()).ToList();
        var seenAgain = new HashSet<LocationEventBuilder>();
        foreach (var sighting in sightings.ToList())
        {
            if (byName.TryGetValue(same.NameOf(sighting[0].Key), out var known))
            {
                known.Seen(sighting, day);
                seenAgain.Add(known);
                sightings.Remove(sighting);
            }
        }

        foreach (var condition in sightings.GroupBy(s => s[0].Content.Condition).OrderBy(g => g.Key))
        {
            var others = open.Where(e => e.Condition == condition.Key && !seenAgain.Contains(e)).OrderByDescending(e => e.LatestSize).ToList();
            foreach (var (i, sighting) in condition.OrderByDescending(Size).Index())
            {
                var e = i < others.Count ? others[i] : Begin(day, condition.Key);
                e.Seen(sighting, day);
                byName[same.NameOf(sighting[0].Key)] = e;
            }
        }
    }

    private static double Size(List<Recorded<Finding>> sighting) => sighting.Max(f => f.Content.SizeMillimetres ?? 0);

    private LocationEventBuilder Begin(LocationDay day, Condition condition)
    {
        var begun = new LocationEventBuilder
        {
            Condition = condition,
            FoundDate = day.Date,
            Found = day.Hours,
            LastGood = LastGood(condition, day.Hours),
            PresentAtEntry = marks.Count == 0,
            Since = closings.TryGetValue(condition, out var closing) ? closing : null,
            Ordinal = NextOrdinal(condition),
        };
        all.Add(begun);
        open.Add(begun);
        return begun;
    }

    /// <summary>
    /// The latest hours, below those of the finding where there are any, at which it was not there: a look, a start, or an action
    /// against it.
    /// </summary>
    private Hours? LastGood(Condition condition, Hours found)
    {
        if (marks.Count == 0)
            return null;
        var last = marks.FindLastIndex(m => m < found) is var i and >= 0 ? marks[i] : marks[0];
        return closings.TryGetValue(condition, out var closing) && closing.At > last && closing.At <= found ? closing.At : last;
    }

    private int NextOrdinal(Condition condition) => ordinals[condition] = ordinals.GetValueOrDefault(condition) + 1;

    private void CloseUnrecorded(LocationDay day, Look look)
    {
        if (open.Count == 0 || day.Closes)
            return;
        foreach (var e in open.Where(e => !e.IsHeld).ToList())
        {
            e.Close(by: null, day, look.Keys);
            open.Remove(e);
            records.List(
                DataProblemKind.ActionNotRecorded,
                day.Date,
                $"{FirstLetter.Capital(ConditionWords.Name(e.Condition))} at {timeline.Location} of {e.FoundDate:O} was gone on {day.Date:O}, "
                    + "but no action against it is recorded.",
                [.. e.Evidence.Distinct()],
                subject: [e.Evidence[0]]);
        }
    }

    /// <summary>What is open and not mentioned, neither found again, nor accepted, nor the matter of an action of the day.</summary>
    private void PassOver(LocationDay day, Look look)
    {
        if (open.Count == 0 || !look.IsExamined || day.Actions.Count > 0 || day.Renews)
            return;
        foreach (var e in open.Where(e => !look.Accepted.Contains(e.Condition)))
            e.PassOver(day, look);
    }

    /// <summary>
    /// A part with an open failing condition that came out "examined good": the finding counts (rule 2). An action that closed the
    /// condition and kept the part settles it first.
    /// </summary>
    private void ListTakenOutGood(LocationDay day)
    {
        if (day.Removals.Count == 0)
            return;
        var good = day.Removals.Where(r => r.Content.ExaminedGood).Select(r => r.Key).ToList();
        if (good.Count == 0 || day.Actions.Any(a => ActionEffect.Closes(a.Content.Kind) && !ActionEffect.Renews(a.Content.Kind)))
            return;
        var kind = timeline.Kind;
        foreach (var e in open.Where(e => !kind.HasLife || kind.Failures.Contains(e.Condition)))
        {
            var outcome = kind.HasLife ? "The finding counts: the part failed" : "The finding counts";
            records.List(
                DataProblemKind.TakenOutGoodWithFinding,
                day.Date,
                $"{FirstLetter.Capital(ConditionWords.Name(e.Condition))} at {timeline.Location} was found on {e.FoundDate:O} and is open, "
                    + $"but the part came out on {day.Date:O} as examined good. {outcome}.",
                [.. e.Evidence.Concat(good).Distinct()],
                subject: [e.Evidence[0], .. good]);
        }
    }

    private void ListNotMentioned(LocationEventBuilder e)
    {
        if (e.SilentLooks.Count == 0)
            return;
        var more = e.SilentLooks.Count - 1;
        var others = more == 0 ? "does not mention it" : $"and {NumberWords.Count(more, "more does", "more do")} not mention it";
        records.List(
            DataProblemKind.OpenFindingNotMentioned,
            e.SilentLooks[0],
            $"{FirstLetter.Capital(ConditionWords.Name(e.Condition))} at {timeline.Location} was found on {e.FoundDate:O} and was open, "
                + $"but the look of {e.SilentLooks[0]:O} {others}. It stays open until an action closes it; found again, it is still one.",
            [e.Evidence[0], .. e.SilentKeys.Distinct()],
            subject: [e.Evidence[0]]);
    }

    private void Act(LocationDay day)
    {
        if (day.Actions.Count == 0)
            return;
        var keys = day.Actions.Select(a => a.Key).ToList();
        if (day.ClosingAction is { } kind)
        {
            foreach (var e in open)
            {
                e.Close(kind, day, keys);
                closings[e.Condition] = (kind, day.Hours);
            }

            open.Clear();
        }
        else
        {
            open.ForEach(e => e.Hold(day));
        }
    }

    private void Renew(LocationDay day)
    {
        var keys = day.Removals.Select(r => r.Key).Concat(day.Renewal?.Keys ?? []).ToList();
        open.ForEach(e => e.Close(ActionKind.Replaced, day, keys));
        all.ForEach(e => e.Renew(day));
        open.Clear();
        byName.Clear();
        ordinals.Clear();
        closings.Clear();
        if (day.Renewal is not null || marks.Count > 0)
        {
            marks.Clear();
            marks.Add(day.Hours);
        }
    }

    private LocationEvent Build(LocationEventBuilder e, IReadOnlyList<LocationExposure> exposures)
    {
        var aircraft = records.Description;
        var arose = e.PresentAtEntry ? null : exposures.FirstOrDefault(x => x.From < e.Found && e.Found <= x.To);
        return arose is null
            ? e.Build(timeline, aircraft.Registration, aircraft.On(e.FoundDate).TypeGroup, aircraft.On(e.FoundDate).Base)
            : e.Build(timeline, aircraft.Registration, arose.TypeGroup, arose.Base);
    }
}
