namespace FleetTrend.Trends.Scores;

/// <summary>Flags and watches that were raised in a quarter, and what people made of them by now.</summary>
public sealed record CallScore
{
    /// <summary>Flags raised, with watches that became one.</summary>
    public required int Flags { get; init; }

    /// <summary>Watches raised that became none.</summary>
    public required int Watches { get; init; }

    /// <summary>Those about which something was done.</summary>
    public required int ActedOn { get; init; }

    /// <summary>Of them, those where it helped.</summary>
    public required int Helped { get; init; }

    /// <summary>Of them, those where it did not.</summary>
    public required int NoBetter { get; init; }

    /// <summary>Those closed without an action.</summary>
    public required int ClosedAsNothing { get; init; }

    /// <summary>Those that nobody has settled.</summary>
    public required int Open { get; init; }

    /// <summary>Calls that chance alone would raise in the aircraft-years of the quarter, by the parameters.</summary>
    public required double ExpectedFalse { get; init; }
}
