namespace FleetTrend.Trends.Scores;

/// <summary>Days that were named for looks in a quarter, and whether the looks came.</summary>
public sealed record DueScore
{
    /// <summary>Aircraft of which a day in the quarter was named at its beginning.</summary>
    public required int Named { get; init; }

    /// <summary>Those looked at by that day, or before they had flown the hours.</summary>
    public required int Met { get; init; }

    /// <summary>Those looked at later.</summary>
    public required int Late { get; init; }

    /// <summary>Those past the day and the hours, and not looked at yet.</summary>
    public required int Open { get; init; }

    /// <summary>Those that have flown the hours by now.</summary>
    public required int Flown { get; init; }

    /// <summary>Of them, those that had flown the hours within a week of the day.</summary>
    public required int WithinWeek { get; init; }

    /// <summary>Days from the day that was named to the one on which the hours were flown, the median; below 0 where they were flown sooner. Null
    /// where none has.</summary>
    public double? MedianDaysLate { get; init; }
}
