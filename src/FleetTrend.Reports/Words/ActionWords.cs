using FleetTrend.Records.Actions;

namespace FleetTrend.Reports.Words;

/// <summary>Actions in words.</summary>
public static class ActionWords
{
    /// <summary>What was done: <c>stop-drilled</c>; <c>open</c> where nothing has closed it.</summary>
    public static string Of(ActionKind? action) => action switch
    {
        null => "open",
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
}
