using FleetTrend.Records.Actions;

namespace FleetTrend.Records.Words;

/// <summary>Actions in a mechanic's words.</summary>
public static class ActionWords
{
    /// <summary>What was done: <c>stop-drilled</c>.</summary>
    public static string Done(ActionKind action) => action switch
    {
        ActionKind.StopDrilled => "stop-drilled",
        ActionKind.WeldRepaired => "welded",
        ActionKind.Replaced => "replaced",
        ActionKind.Retorqued => "re-torqued",
        ActionKind.Resurfaced => "resurfaced",
        ActionKind.Cleaned => "cleaned",
        ActionKind.Adjusted => "adjusted",
        ActionKind.Deferred => "deferred",
        ActionKind.Monitored => "monitored",
        ActionKind.Lubricated => "lubricated",
        _ => "other action",
    };

    /// <summary>The action by name: <c>weld repair</c>.</summary>
    public static string Name(ActionKind action) => action switch
    {
        ActionKind.StopDrilled => "stop drilling",
        ActionKind.WeldRepaired => "weld repair",
        ActionKind.Replaced => "replacement",
        ActionKind.Retorqued => "re-torque",
        ActionKind.Resurfaced => "resurfacing",
        ActionKind.Cleaned => "cleaning",
        ActionKind.Adjusted => "adjustment",
        ActionKind.Deferred => "deferral",
        ActionKind.Monitored => "monitoring",
        ActionKind.Lubricated => "lubrication",
        _ => "other action",
    };

    /// <summary>Many of them: <c>weld repairs</c>.</summary>
    public static string Many(ActionKind action) => Name(action) + "s";

    /// <summary>What was done and how often, most often first: <c>stop-drilled 4 times, welded once</c>; empty where nothing was.</summary>
    public static string CountDone(IEnumerable<ActionKind> actions) => string.Join(", ", actions
        .GroupBy(a => a)
        .OrderByDescending(g => g.Count()).ThenBy(g => g.Key)
        .Select(g => $"{Done(g.Key)} {NumberWords.Times(g.Count())}"));
}
