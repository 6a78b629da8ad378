namespace FleetTrend.Benchmarks;

/// <summary>One task done by R and by us on the same file in the same run; reading the file is not counted on either side.</summary>
internal sealed record Race
{
    /// <summary>What is computed.</summary>
    public required string Name { get; init; }

    /// <summary>File name without rows: intervals, lives, recurrences, right.</summary>
    public required string File { get; init; }

    /// <summary>Rows of the file, a power of ten.</summary>
    public required int Rows { get; init; }

    /// <summary>Task of r/time.R.</summary>
    public required string RTask { get; init; }

    /// <summary>How many times faster than R we have to be.</summary>
    public required double Floor { get; init; }

    /// <summary>Turns the file's columns into our input, before the clock starts, and gives the work to be timed.</summary>
    public required Func<PerformanceFile, Func<double[]>> Prepare { get; init; }

    /// <summary>Compares our values (first) with R's; null when they agree, else what differs.</summary>
    public required Func<double[], double[], string?> Disagreement { get; init; }

    /// <summary>Every value equal within a relative tolerance.</summary>
    public static Func<double[], double[], string?> Within(double relative) => (ours, theirs) =>
    {
        for (var i = 0; i < theirs.Length; i++)
        {
            if (!(Math.Abs(ours[i] - theirs[i]) <= relative * Math.Abs(theirs[i])))
                return $"value {i}: ours {ours[i]:R}, R {theirs[i]:R}";
        }

        return null;
    };
}
