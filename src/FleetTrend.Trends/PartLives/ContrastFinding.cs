namespace FleetTrend.Trends.PartLives;

/// <summary>What a comparison of one base with the others found, by its q-value and the direction of its ratio.</summary>
public enum ContrastFinding
{
    /// <summary>Too little data to compare.</summary>
    NotCompared = 0,

    /// <summary>Compared, and no difference shown. It may still be there.</summary>
    NoneShown = 1,

    /// <summary>Worse here: half fail sooner, or more fail early.</summary>
    Worse = 2,

    /// <summary>Better here: half fail later, or fewer fail early.</summary>
    Better = 3,
}
