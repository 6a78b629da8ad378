namespace FleetTrend.Client;

/// <summary>How records are pushed. The defaults suit a single sender on a network that sometimes breaks.</summary>
public sealed record PushOptions
{
    /// <summary>Most records sent and not yet handed back with an outcome, 1 to 100,000.</summary>
    public int MaxInFlight { get; init; } = 1_000;

    /// <summary>Longest wait for the next outcome while any is owed, above zero; then the connection is given up for another.</summary>
    public TimeSpan AnswerLimit { get; init; } = TimeSpan.FromMinutes(1);

    /// <summary>Pause before the first new attempt, above zero; it doubles with each attempt that brings no outcome.</summary>
    public TimeSpan FirstPause { get; init; } = TimeSpan.FromMilliseconds(500);

    /// <summary>Longest pause between attempts, unless the server asks for a longer one; at least the first pause.</summary>
    public TimeSpan LongestPause { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How long attempts go on without any outcome before the push stops, zero or more.</summary>
    public TimeSpan GiveUpAfter { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>
    /// Check only: nothing is written. An aircraft that is valid counts as registered for the records after it, until the
    /// connection breaks.
    /// </summary>
    public bool ValidateOnly { get; init; }

    /// <summary>Have records about an aircraft, or a location of it, that is not registered held until it is, instead of refused.</summary>
    public bool HoldUnregistered { get; init; }

    /// <summary>Told of each break and the pause after it.</summary>
    public IProgress<Interruption>? Interruptions { get; init; }

    /// <summary>The first option out of its range, in words; null where all are in order.</summary>
    internal string? Problem() =>
        MaxInFlight is < 1 or > 100_000 ? $"{nameof(MaxInFlight)} {MaxInFlight}: must be 1 to 100,000."
        : AnswerLimit <= TimeSpan.Zero ? $"{nameof(AnswerLimit)} {AnswerLimit}: must be above zero."
        : FirstPause <= TimeSpan.Zero ? $"{nameof(FirstPause)} {FirstPause}: must be above zero."
        : LongestPause < FirstPause ? $"{nameof(LongestPause)} {LongestPause}: must be at least {nameof(FirstPause)}."
        : GiveUpAfter < TimeSpan.Zero ? $"{nameof(GiveUpAfter)} {GiveUpAfter}: must be zero or more."
        : null;
}
