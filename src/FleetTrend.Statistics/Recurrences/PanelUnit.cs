namespace FleetTrend.Statistics.Recurrences;

/// <summary>A unit known from age zero, for which each look tells how many events have come since the look before.</summary>
public sealed class PanelUnit
{
    private readonly (double Age, int Found)[] looks;

    /// <summary>Makes a unit.</summary>
    /// <param name="looks">Ages of the looks, hours, above zero and rising, each with the events found new at it.</param>
    /// <exception cref="ArgumentException">No look, an age out of order or not finite, or a negative count.</exception>
    public PanelUnit(IEnumerable<(double Age, int Found)> looks)
    {
        this.looks = [.. looks];
        if (this.looks.Length == 0)
            throw new ArgumentException("A panel unit has at least one look.", nameof(looks));
        var before = 0.0;
        foreach (var (age, found) in this.looks)
        {
            if (!double.IsFinite(age) || age <= before)
                throw new ArgumentException($"Look ages are finite, above zero and rise; {age} follows {before}.", nameof(looks));
            if (found < 0)
                throw new ArgumentException($"A look at {age} found {found} events.", nameof(looks));
            before = age;
        }
    }

    /// <summary>Looks in order of age.</summary>
    public IReadOnlyList<(double Age, int Found)> Looks => looks;
}
