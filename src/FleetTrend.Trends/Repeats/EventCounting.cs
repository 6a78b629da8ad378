namespace FleetTrend.Trends.Repeats;

/// <summary>Whether an event counts in the rate of its place, and if not, why.</summary>
public enum EventCounting
{
    /// <summary>It counts: found in watched hours of the type group.</summary>
    Counted = 1,

    /// <summary>It was there at the first look, with no start of watching behind it: listed, and in no rate.</summary>
    PresentAtEntry = 2,

    /// <summary>It was found in no watched hours, such as on the day a part went in: listed, and in no rate.</summary>
    NotWatched = 3,

    /// <summary>It arose while the aircraft was in another type group: it counts there.</summary>
    OtherTypeGroup = 4,
}
