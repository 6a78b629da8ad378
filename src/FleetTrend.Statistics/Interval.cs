using System.Runtime.InteropServices;

namespace FleetTrend.Statistics;

/// <summary>
/// A two-sided interval for one number, both ends included, at a stated confidence (or credibility).
/// An end that the data do not limit is infinite or the edge of the parameter's range; an end is never NaN.
/// </summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Interval
{
    /// <summary>Makes an interval.</summary>
    /// <param name="lower">Lower end, in the unit of the number it belongs to.</param>
    /// <param name="upper">Upper end, in the same unit.</param>
    /// <param name="confidence">Share of such intervals that hold the truth in the long run, in (0, 1).</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is NaN, the ends are swapped, or the confidence is not in (0, 1).</exception>
    public Interval(double lower, double upper, double confidence = 0.95)
    {
        if (double.IsNaN(lower)) throw new ArgumentOutOfRangeException(nameof(lower), lower, "An interval's lower end must be a number.");
        if (!(upper >= lower))
            throw new ArgumentOutOfRangeException(nameof(upper), upper, $"An interval's upper end must be a number not below its lower end, {lower}.");
        Confidences.Check(confidence);
        Lower = lower;
        Upper = upper;
        Confidence = confidence;
    }

    /// <summary>Lower end, included; may be negative infinity.</summary>
    public double Lower { get; }

    /// <summary>Upper end, included; may be positive infinity.</summary>
    public double Upper { get; }

    /// <summary>Confidence, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>Whether <paramref name="value"/> lies between the ends, ends included.</summary>
    public bool Contains(double value) => value >= Lower && value <= Upper;

    /// <summary>Both ends and the confidence, invariant culture.</summary>
    public override string ToString() => $"[{Lower}, {Upper}] at {Confidence}";
}
