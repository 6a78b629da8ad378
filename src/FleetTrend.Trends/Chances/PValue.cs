using System.Runtime.InteropServices;
using System.Text.Json.Serialization;

namespace FleetTrend.Trends.Chances;

/// <summary>p-value of a test, with the law that it comes from: words about it follow the law.</summary>
[JsonConverter(typeof(PValueConverter))]
[StructLayout(LayoutKind.Auto)]
public readonly record struct PValue
{
    private PValue(double value, PValueLaw law)
    {
        if (value is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(value), value, "A p-value lies in [0, 1].");
        (Value, Law) = (value, law);
    }

    /// <summary>The chance, in [0, 1].</summary>
    public double Value { get; }

    /// <summary>How far down it can be trusted.</summary>
    public PValueLaw Law { get; }

    /// <summary>One whose law is known exactly under the test's assumption, such as of a count given the total.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside [0, 1].</exception>
    public static PValue Exact(double value) => new(value, PValueLaw.Exact);

    /// <summary>One from a law that holds nearly, such as a likelihood ratio, a normal or Student's law, or a mid-P.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside [0, 1].</exception>
    public static PValue Approximate(double value) => new(value, PValueLaw.Approximate);

    /// <summary>The chance as a number, for arithmetic.</summary>
    public static implicit operator double(PValue p) => p.Value;

    /// <summary>The chance as a number, for arithmetic.</summary>
    public double ToDouble() => Value;
}
