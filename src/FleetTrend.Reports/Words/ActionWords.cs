using FleetTrend.Records.Actions;

namespace FleetTrend.Reports.Words;

/// <summary>Actions in words.</summary>
public static class ActionWords
{
    /// <summary>What was done: <c>stop-drilled</c>.</summary>
    public static string Of(ActionKind action) => action switch
    {
        ActionKind.StopDrilled => "stop-drilled",
        ActionKind.WeldRepaired => "weld-repaired",
        ActionKind.Replaced => "replaced",
        ActionKind.Retorqued => "re-torqued",
        ActionKind.Resurfaced => "resurfaced",
        ActionKind.Cleaned => "cleaned",
        ActionKind.Adjusted => "adjusted",
        ActionKind.Deferred => "deferred",
        ActionKind.Monitored => "monitored",
        _ => "other action",
    };

    /// <summary>The action by name: <c>weld repair</c>.</summary>
    public static string Named(ActionKind action) => action switch
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
        _ => "other action",
    };
}
