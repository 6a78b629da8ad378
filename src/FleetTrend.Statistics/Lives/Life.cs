using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// One life, or several alike: it failed in (<see cref="Lower"/>, <see cref="Upper"/>] and came under observation at
/// <see cref="Entry"/>, all in hours since installation (any unit of use will do, if it is the same for all).
/// </summary>
/// <remarks>
/// <list type="bullet">
/// <item>Lower = Upper: the failure age is known exactly.</item>
/// <item>Upper = positive infinity: not failed when last looked at, at Lower (right-censored).</item>
/// <item>Lower = 0 and Upper finite: failed before its first look (left-censored).</item>
/// <item>Entry above 0: had it failed before Entry it would not be in the data (left-truncated).</item>
/// </list>
/// </remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Life
{
    /// <summary>Makes a life.</summary>
    /// <param name="lower">Age at the last look that found it good, not negative, not below <paramref name="entry"/>.</param>
    /// <param name="upper">Age at the look that found it failed; positive infinity when none has.</param>
    /// <param name="entry">Age at which it came under observation; 0 when followed from new.</param>
    /// <param name="count">Number of lives alike, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An end is NaN or negative, lower is infinite, upper is below lower, entry lies outside [0, lower], an exact failure is at
    /// age 0 or at its entry, or the count is below 1.
    /// </exception>
    public Life(double lower, double upper, double entry = 0, int count = 1)
    {
        if (!(lower >= 0 && double.IsFinite(lower)))
            throw new ArgumentOutOfRangeException(nameof(lower), lower, "The last good age must be finite and not negative.");
        if (!(upper >= lower))
            throw new ArgumentOutOfRangeException(nameof(upper), upper, $"The failed-by age must be a number not below the last good age, {lower}.");
        if (!(entry >= 0 && entry <= lower))
            throw new ArgumentOutOfRangeException(nameof(entry), entry, $"The entry age must lie between 0 and the last good age, {lower}.");
        if (lower == upper && lower <= entry)
            throw new ArgumentOutOfRangeException(nameof(upper), upper, $"An exact failure age must lie above the entry age, {entry}.");
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        Lower = lower;
        Upper = upper;
        Entry = entry;
        Count = count;
    }

    /// <summary>Age at the last good look, hours; the failure came later (or exactly here, when equal to <see cref="Upper"/>).</summary>
    public double Lower { get; }

    /// <summary>Age by which it had failed, hours, included; positive infinity when it had not.</summary>
    public double Upper { get; }

    /// <summary>Age at which observation began, hours; 0 when followed from new.</summary>
    public double Entry { get; }

    /// <summary>Number of lives alike.</summary>
    public int Count { get; }

    /// <summary>Whether it failed (at a known age or between two looks).</summary>
    public bool Failed => double.IsFinite(Upper);

    /// <summary>Whether the failure age is known exactly.</summary>
    public bool IsExact => Lower == Upper;

    /// <summary>A failure at an age known exactly.</summary>
    /// <inheritdoc cref="Life(double, double, double, int)" path="/exception"/>
    public static Life FailedAt(double age, double entry = 0, int count = 1) => new(age, age, entry, count);

    /// <summary>A failure after <paramref name="lastGood"/> and not after <paramref name="foundFailed"/>.</summary>
    /// <inheritdoc cref="Life(double, double, double, int)" path="/exception"/>
    public static Life FailedBetween(double lastGood, double foundFailed, double entry = 0, int count = 1) =>
        new(lastGood, foundFailed, entry, count);

    /// <summary>Not failed when last looked at (right-censored).</summary>
    /// <inheritdoc cref="Life(double, double, double, int)" path="/exception"/>
    public static Life GoodAt(double lastGood, double entry = 0, int count = 1) => new(lastGood, double.PositiveInfinity, entry, count);
}
