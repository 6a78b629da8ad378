namespace FleetTrend.Cli.SendTest;

/// <summary>Another clock, read at a moment between two readings of ours.</summary>
/// <param name="Asked">Ours, before.</param>
/// <param name="Answered">Ours, after.</param>
/// <param name="Theirs">What the other one said, rounded down.</param>
/// <param name="Rounding">To what it was rounded.</param>
internal sealed record ClockReading(DateTimeOffset Asked, DateTimeOffset Answered, DateTimeOffset Theirs, TimeSpan Rounding)
{
    /// <summary>How far ours is ahead, below zero behind; as little as the readings leave open, so that a slow answer is no difference.</summary>
    public TimeSpan Ahead
    {
        get
        {
            var least = Asked - (Theirs + Rounding);
            var most = Answered - Theirs;
            return least > TimeSpan.Zero ? least : most < TimeSpan.Zero ? most : TimeSpan.Zero;
        }
    }

    /// <summary>The same in words, before whose clock it is.</summary>
    public string Words => Math.Round(Ahead.TotalSeconds) switch
    {
        0 => "same as",
        > 0 and var seconds => $"{seconds:0} s ahead of",
        var seconds => $"{-seconds:0} s behind",
    };
}
