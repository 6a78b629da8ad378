namespace FleetTrend.Statistics.Decisions;

/// <summary>A part in service and the looks ahead of it. A failure is found at the look after it, and the part renewed there.</summary>
public sealed record PartInUse
{
    /// <summary>Makes a part.</summary>
    /// <param name="goodAge">Age when it was last seen good, hours.</param>
    /// <param name="age">Age now, hours; not below the former.</param>
    /// <param name="toLook">Hours from now to its next look, zero or more.</param>
    /// <param name="lookHours">Hours from each later look to the next, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is not finite or outside its range.</exception>
    public PartInUse(double goodAge, double age, double toLook, double lookHours)
    {
        Check(goodAge, 0, nameof(goodAge));
        Check(age, goodAge, nameof(age));
        Check(toLook, 0, nameof(toLook));
        Check(lookHours, double.Epsilon, nameof(lookHours));
        (GoodAge, Age, ToLook, LookHours) = (goodAge, age, toLook, lookHours);
    }

    /// <summary>Age when it was last seen good, hours.</summary>
    public double GoodAge { get; }

    /// <summary>Age now, hours.</summary>
    public double Age { get; }

    /// <summary>Hours from now to its next look.</summary>
    public double ToLook { get; }

    /// <summary>Hours from each later look to the next.</summary>
    public double LookHours { get; }

    /// <summary>Looks in so many hours from now.</summary>
    internal int LooksWithin(double hours)
    {
        // The margin forgives the rounding of whole intervals.
        var beyond = hours - ToLook + 1e-9 * LookHours;
        return beyond < 0 ? 0 : 1 + (int)Math.Min(DemandForecast.MostLooks - 1, beyond / LookHours);
    }

    /// <summary>Age that it reaches by a look, the first being 1, where it is not renewed.</summary>
    internal double AgeAtLook(int look) => Age + ToLook + (look - 1) * LookHours;

    private static void Check(double value, double least, string name)
    {
        if (!(value >= least && double.IsFinite(value)))
            throw new ArgumentOutOfRangeException(name, value, $"must be finite and {least} or more.");
    }
}
