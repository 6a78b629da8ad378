namespace FleetTrend.Store;

/// <summary>Keys of the advisory locks, so that no two mean different things by one number.</summary>
internal static class AdvisoryLock
{
    /// <summary>Shared by every writer of records, exclusive for the moment in which an as-of time is fixed.</summary>
    public const long Knowledge = 0x464C_5401;

    /// <summary>One process at a time migrates.</summary>
    public const long Schema = 0x464C_5402;

    /// <summary>One at a time adds layouts, so that a path gets one kind.</summary>
    public const long Layouts = 0x464C_5403;

    /// <summary>One at a time raises or answers flags.</summary>
    public const long Flags = 0x464C_5404;

    /// <summary>One at a time takes or answers data problems.</summary>
    public const long DataProblems = 0x464C_5410;

    /// <summary>One at a time decides that findings are one event.</summary>
    public const long Merges = 0x464C_5411;

    /// <summary>One at a time changes the parameters.</summary>
    public const long Parameters = 0x464C_5412;

    /// <summary>One at a time lets go of old results.</summary>
    public const long Thinning = 0x464C_5413;

    /// <summary>First half of a two-part key; the second half is the name of a job. One process at a time runs it.</summary>
    public const int Job = 0x464C_5406;

    /// <summary>One process at a time makes the first key.</summary>
    public const long FirstKey = 0x464C_5407;

    /// <summary>One at a time adds or changes people.</summary>
    public const long People = 0x464C_5414;
}
