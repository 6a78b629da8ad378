using FleetTrend.Records.Findings;

namespace FleetTrend.Observations.DataProblems;

/// <summary>Conditions by name, as a sentence about a problem starts.</summary>
internal static class ConditionNames
{
    /// <summary>With a capital first letter: <c>Leak trace</c>.</summary>
    public static string Format(Condition condition) => condition switch
    {
        Condition.LeakTrace => "Leak trace",
        Condition.MissingPiece => "Missing piece",
        Condition.Other => "Other finding",
        _ => condition.ToString(),
    };
}
