using System.Globalization;

namespace FleetTrend.Records;

/// <summary>A count of hours with one decimal: an aircraft's time in service, a meter value, hours on a part.</summary>
/// <remarks>Kept as whole tenths, so that sums and differences are exact. The default value is 0.0 h.</remarks>
public readonly record struct Hours : IComparable<Hours>
{
    /// <summary>Zero hours.</summary>
    public static readonly Hours Zero = new(0);

    private Hours(long tenths) => Tenths = tenths;

    /// <summary>The hours in tenths.</summary>
    public long Tenths { get; }

    /// <summary>The hours as a number, for statistics.</summary>
    public double Value => Tenths / 10.0;

    /// <summary>Hours from whole tenths.</summary>
    public static Hours FromTenths(long tenths) => new(tenths);

    /// <summary>Hours from a number that has at most one decimal.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, too large, or has more than one decimal.</exception>
    public static Hours From(double value) =>
        TryFrom(value, out var hours)
            ? hours
            : throw new ArgumentOutOfRangeException(nameof(value), value, "Hours are finite and have at most one decimal.");

    /// <summary>Hours from a number, or false where it is not finite, beyond 10 million, or has more than one decimal.</summary>
    public static bool TryFrom(double value, out Hours hours)
    {
        hours = Zero;
        if (!double.IsFinite(value) || Math.Abs(value) > 1e7)
        {
            return false;
        }

        var tenths = Math.Round(value * 10);
        hours = new Hours((long)tenths);
        return Math.Abs((value * 10) - tenths) < 1e-6;
    }

    /// <summary>Sum of two counts of hours.</summary>
    public static Hours operator +(Hours left, Hours right) => new(left.Tenths + right.Tenths);

    /// <summary>Difference of two counts of hours; it may be negative.</summary>
    public static Hours operator -(Hours left, Hours right) => new(left.Tenths - right.Tenths);

    /// <summary>Earlier in hours.</summary>
    public static bool operator <(Hours left, Hours right) => left.Tenths < right.Tenths;

    /// <summary>Later in hours.</summary>
    public static bool operator >(Hours left, Hours right) => left.Tenths > right.Tenths;

    /// <summary>Earlier or equal in hours.</summary>
    public static bool operator <=(Hours left, Hours right) => left.Tenths <= right.Tenths;

    /// <summary>Later or equal in hours.</summary>
    public static bool operator >=(Hours left, Hours right) => left.Tenths >= right.Tenths;

    /// <inheritdoc/>
    public int CompareTo(Hours other) => Tenths.CompareTo(other.Tenths);

    /// <summary>One decimal, invariant: <c>812.4</c>.</summary>
    public override string ToString() => Value.ToString("0.0", CultureInfo.InvariantCulture);
}
