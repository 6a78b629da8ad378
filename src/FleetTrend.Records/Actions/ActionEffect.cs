namespace FleetTrend.Records.Actions;

/// <summary>What an action does to the open events and to the life at its location.</summary>
public static class ActionEffect
{
    /// <summary>True where the action closes open events there: all but deferred and monitored.</summary>
    public static bool Closes(ActionKind kind) => kind is not (ActionKind.Deferred or ActionKind.Monitored);

    /// <summary>True where the action starts a new life: only a replacement.</summary>
    public static bool Renews(ActionKind kind) => kind is ActionKind.Replaced;
}
