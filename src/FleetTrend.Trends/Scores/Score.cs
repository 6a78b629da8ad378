namespace FleetTrend.Trends.Scores;

/// <summary>What was foreseen of a type group for a quarter, and what then happened, by the records known now.</summary>
public sealed record Score
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The quarter.</summary>
    public required Quarter Quarter { get; init; }

    /// <summary>Whether it is over.</summary>
    public required bool IsOver { get; init; }

    /// <summary>Chances before the next look; null where none were kept by then.</summary>
    public ChanceScore? Chances { get; init; }

    /// <summary>The same of this quarter and the one before together; null until it is over.</summary>
    public ChanceScore? ChancesOfTwo { get; init; }

    /// <summary>Spares foreseen in the quarter; null where none were kept in it.</summary>
    public SpareScore? Spares { get; init; }

    /// <summary>The same of those foreseen in this quarter and the one before; null until it is over.</summary>
    public SpareScore? SparesOfTwo { get; init; }

    /// <summary>Days named for looks; null where none were kept in the quarter.</summary>
    public DueScore? DueLooks { get; init; }

    /// <summary>Calls raised in the quarter; null in scores stored before they were counted.</summary>
    public CallScore? Calls { get; init; }

    /// <summary>Actions that were found to have helped in the quarter; null where none were.</summary>
    public EffectScore? Effects { get; init; }
}
