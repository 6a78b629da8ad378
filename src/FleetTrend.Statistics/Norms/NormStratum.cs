namespace FleetTrend.Statistics.Norms;

/// <summary>
/// Units that may be compared with each other at one rate: for example one location within one type group.
/// </summary>
public sealed record NormStratum
{
    /// <summary>Makes a stratum.</summary>
    /// <param name="key">Its key, used to say which stratum drives a unit's standing.</param>
    /// <param name="counts">One count per unit, in any order.</param>
    /// <exception cref="ArgumentException">A unit appears twice.</exception>
    public NormStratum(string key, IReadOnlyList<UnitCount> counts)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(counts);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var count in counts)
        {
            if (!seen.Add(count.Unit))
                throw new ArgumentException($"Unit {count.Unit} appears twice in stratum {key}.", nameof(counts));
        }
        Key = key;
        Counts = counts;
        Events = counts.Sum(c => (long)c.Events);
        ExposureHours = counts.Sum(c => c.ExposureHours);
    }

    /// <summary>Its key.</summary>
    public string Key { get; }

    /// <summary>One count per unit.</summary>
    public IReadOnlyList<UnitCount> Counts { get; }

    /// <summary>Events of all units.</summary>
    public long Events { get; }

    /// <summary>Hours of all units.</summary>
    public double ExposureHours { get; }
}
