namespace FleetTrend.Records.Inspections;

/// <summary>What an inspection was for.</summary>
public enum Occasion
{
    /// <summary>The 100-hour inspection.</summary>
    HundredHour = 1,

    /// <summary>The annual inspection.</summary>
    Annual = 2,

    /// <summary>A phase of a progressive programme.</summary>
    Progressive = 3,

    /// <summary>Outside the schedule: a complaint, a check after work.</summary>
    Unscheduled = 4,

    /// <summary>Taking the aircraft in, or handing it over.</summary>
    Acceptance = 5,

    /// <summary>Anything else.</summary>
    Other = 6,
}
