namespace FleetTrend.Statistics.Lives;

/// <summary>A part that is good at an age, and the hours ahead of it.</summary>
public sealed record PartAhead
{
    /// <summary>Makes it.</summary>
    /// <param name="fit">The fitted lives of similar parts.</param>
    /// <param name="age">Age at which it was last seen good, hours.</param>
    /// <param name="ahead">Hours ahead from that age on.</param>
    /// <exception cref="ArgumentOutOfRangeException">Age or hours ahead are negative or not finite.</exception>
    public PartAhead(LifeFit fit, double age, double ahead)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (!(age >= 0 && double.IsFinite(age))) throw new ArgumentOutOfRangeException(nameof(age), age, "An age is finite and not negative.");
        if (!(ahead >= 0 && double.IsFinite(ahead))) throw new ArgumentOutOfRangeException(nameof(ahead), ahead, "Hours ahead are finite and not negative.");
        (Fit, Age, Ahead) = (fit, age, ahead);
    }

    /// <summary>The fitted lives of similar parts.</summary>
    public LifeFit Fit { get; }

    /// <summary>Age at which it was last seen good, hours.</summary>
    public double Age { get; }

    /// <summary>Hours ahead from that age on.</summary>
    public double Ahead { get; }
}
