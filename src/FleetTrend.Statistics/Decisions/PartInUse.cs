using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Decisions;

/// <summary>A part in service and the hours it will run in the time ahead.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PartInUse
{
    /// <summary>Makes a part.</summary>
    /// <param name="age">Age now, hours, finite, zero or more.</param>
    /// <param name="hoursAhead">Hours its aircraft will fly in the time ahead, finite, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or infinite input.</exception>
    public PartInUse(double age, double hoursAhead)
    {
        if (!double.IsFinite(age) || age < 0)
            throw new ArgumentOutOfRangeException(nameof(age), age, "An age is finite, zero or more.");
        if (!double.IsFinite(hoursAhead) || hoursAhead < 0)
            throw new ArgumentOutOfRangeException(nameof(hoursAhead), hoursAhead, "Hours ahead are finite, zero or more.");
        Age = age;
        HoursAhead = hoursAhead;
    }

    /// <summary>Age now, hours.</summary>
    public double Age { get; }

    /// <summary>Hours its aircraft will fly in the time ahead.</summary>
    public double HoursAhead { get; }
}
