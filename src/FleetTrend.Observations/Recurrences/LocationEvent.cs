using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Recurrences;

/// <summary>One condition at one location, counted once from when it is first seen until an action closes it.</summary>
public sealed record LocationEvent
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Kind of the location.</summary>
    public required LocationKind Kind { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>Type group of the exposure in which it arose; of the day it was found where it was present at entry.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Base of the exposure in which it arose; of the day it was found where it was present at entry.</summary>
    public required string Base { get; init; }

    /// <summary>
    /// Time in service at the last look that did not find it, at the action that closed the one before it, or at the start of
    /// exposure, whichever is latest; null where it was <see cref="PresentAtEntry"/>. It arose in (LastGood, Found].
    /// </summary>
    public Hours? LastGood { get; init; }

    /// <summary>Time in service when it was found.</summary>
    public required Hours Found { get; init; }

    /// <summary>The day it was found.</summary>
    public required DateOnly FoundDate { get; init; }

    /// <summary>
    /// The first look found it with no start of exposure before, or it was open when the watch started: listed, but no event of a rate.
    /// </summary>
    public required bool PresentAtEntry { get; init; }

    /// <summary>The last action that closed an earlier event of the same condition here in the same life; null for a first one.</summary>
    public ActionKind? SinceAction { get; init; }

    /// <summary>Time in service at that action.</summary>
    public Hours? SinceActionHours { get; init; }

    /// <summary>Which one of its condition it is at this location since the last renewal: 1 for the first. Events present at entry count.</summary>
    public required int Ordinal { get; init; }

    /// <summary>
    /// The action that closed it (of several on one day, the one that changes the part most; a removal or installation counts as
    /// replaced); null while it is open or where a later good look closed it without one.
    /// </summary>
    public ActionKind? ClosedBy { get; init; }

    /// <summary>The day it was closed; null while it is open.</summary>
    public DateOnly? ClosedDate { get; init; }

    /// <summary>Every action taken while it was open, in order, each with its own day: what left it open, then what closed it.</summary>
    public IReadOnlyList<EventAction> Actions { get; init; } = [];

    /// <summary>Time in service at the first renewal of the place after it was found; null while what is there is the same as then.</summary>
    public Hours? RenewedAt { get; init; }

    /// <summary>Time in service at the first renewal of the place on a day after the one on which it was closed; null while there is none.</summary>
    public Hours? NextRenewedAt { get; init; }

    /// <summary>Sizes measured, in the order seen, in millimetres; growth of one event and not several events.</summary>
    public required IReadOnlyList<SizeSeen> Sizes { get; init; }

    /// <summary>The findings and actions behind it.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }
}
