using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>What happened at one location on one day, in this order: the look, the actions, the removal, the renewal.</summary>
internal sealed record LocationDay
{
    public required DateOnly Date { get; init; }

    /// <summary>Time in service that day.</summary>
    public required Hours Hours { get; init; }

    public required Look? Look { get; init; }

    public required IReadOnlyList<Recorded<CorrectiveAction>> Actions { get; init; }

    public required IReadOnlyList<Recorded<Removal>> Removals { get; init; }

    public required Renewal? Renewal { get; init; }

    /// <summary>Of the day's actions that close events, the one that changes the part most; null where none closes.</summary>
    public ActionKind? ClosingAction
    {
        get
        {
            if (Actions.Count == 0)
                return null;
            var closing = Actions.Select(a => a.Content.Kind).Where(ActionEffect.Closes).ToList();
            return closing.Count == 0 ? null : closing.MaxBy(Weight);
        }
    }

    /// <summary>True where a part came out, went in, or both.</summary>
    public bool Renews => Renewal is not null || Removals.Count > 0;

    /// <summary>True where the day's actions or changes of parts close what was open.</summary>
    public bool Closes => ClosingAction is not null || Renews;

    private static int Weight(ActionKind kind) => kind switch
    {
        ActionKind.Replaced => 8,
        ActionKind.WeldRepaired => 7,
        ActionKind.Resurfaced => 6,
        ActionKind.StopDrilled => 5,
        ActionKind.Retorqued => 4,
        ActionKind.Adjusted => 3,
        ActionKind.Lubricated => 2,
        _ => 1,
    };
}
