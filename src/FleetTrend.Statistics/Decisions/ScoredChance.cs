using System.Runtime.InteropServices;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Decisions;

/// <summary>A chance that was stated of a part on a unit (aircraft), how far the life distribution behind it may be off, and what then happened.</summary>
/// <param name="Unit">Number of the unit, from 0.</param>
/// <param name="Law">Number of the life distribution, from 0; chances by one distribution, fitted again later too, share its error.</param>
/// <param name="Chance">The chance, in [0, 1].</param>
/// <param name="FirstError">By how much one standard deviation of the first of two independent errors of the distribution moves the chance.</param>
/// <param name="SecondError">The same of the second.</param>
/// <param name="Happened">Whether it happened.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ScoredChance(int Unit, int Law, double Chance, double FirstError, double SecondError, bool Happened)
{
    /// <summary>The chance that a part good at an age fails in the hours ahead, by a life distribution.</summary>
    public static ScoredChance From(int unit, int law, LifeEstimate life, double age, double ahead, bool happened)
    {
        ArgumentNullException.ThrowIfNull(life);
        var chance = life.ChanceAhead(age, ahead);
        var (first, second) = life.Covariance.Errors(chance.OfLogScale, chance.OfLogShape);
        return new ScoredChance(unit, law, chance.Chance, first, second, happened);
    }
}
