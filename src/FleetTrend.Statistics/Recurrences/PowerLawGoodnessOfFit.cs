using MathNet.Numerics.Random;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>Whether a power law describes the events: the Cramér-von Mises distance of the transformed ages from evenness.</summary>
/// <param name="Statistic">The distance; 0 is perfect.</param>
/// <param name="Events">Events that entered it.</param>
/// <param name="PValue">Chance of at least this distance were the power law true, from seeded simulation.</param>
/// <param name="Simulations">Simulated samples behind the chance.</param>
public sealed record PowerLawGoodnessOfFit(double Statistic, long Events, double PValue, int Simulations)
{
    /// <summary>Beyond this many events the statistic's distribution no longer changes (AMSAA TR-138 Table 2 stands still from 60 on).</summary>
    private const int LargestSample = 300;

    /// <summary>The test for units watched from age zero without a gap.</summary>
    /// <param name="units">The units.</param>
    /// <param name="truncation">With <see cref="Truncation.Event"/> each unit ends at its last event, which is left out.</param>
    /// <param name="simulations">Samples to simulate, one or more.</param>
    /// <param name="seed">Seed of the simulation: the same seed gives the same chance.</param>
    /// <returns>
    /// The test; <see cref="NotEstimableKind.NoInformation"/> with late entry or gaps, where the statistic's distribution would
    /// depend on the unknown exponent; <see cref="NotEstimableKind.TooFewEvents"/> below two informative events.
    /// </returns>
    /// <remarks>Source: Crow 1975, AMSAA Technical Report 138, section 3.7 (pooled ages over end, unbiased exponent).</remarks>
    public static Outcome<PowerLawGoodnessOfFit> Test(
        IReadOnlyList<RecurrenceUnit> units, Truncation truncation = Truncation.Time, int simulations = 2000, int seed = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(simulations, 1);
        var events = units.Sum(u => (long)u.EventTimes.Count);
        if (units.Any(u => u.Windows.Count > 1 || u.Windows.Count == 1 && u.Windows[0].Start > 0))
        {
            return new NotEstimable(
                NotEstimableKind.NoInformation, events, "Defined only for units watched from age zero without a gap.");
        }
        if (ConditionalExponent.Build(units, truncation) is not { } exponent)
            return new NotEstimable(NotEstimableKind.TooFewEvents, events, "Fewer than two events that can tell a power law.");

        var ratios = new List<double>();
        foreach (var unit in units.Where(u => u.EventTimes.Count > 0))
        {
            var end = truncation == Truncation.Event ? unit.EventTimes[^1] : unit.Windows[0].Stop;
            var take = truncation == Truncation.Event ? unit.EventTimes.Count - 1 : unit.EventTimes.Count;
            ratios.AddRange(unit.EventTimes.Take(take).Select(t => t / end));
        }
        var even = ratios.Select(r => Math.Pow(r, exponent.Unbiased)).ToArray();
        var statistic = Distance(even);
        var above = Simulated(Math.Min(even.Length, LargestSample), simulations, seed).Count(d => d >= statistic);
        return new PowerLawGoodnessOfFit(statistic, even.Length, (above + 1.0) / (simulations + 1.0), simulations);
    }

    /// <summary>The distances that a true power law passes with stated chances.</summary>
    /// <param name="events">Informative events, two or more.</param>
    /// <param name="levels">Those chances, each in (0, 1).</param>
    /// <param name="simulations">Samples to simulate, 100 or more.</param>
    /// <param name="seed">Seed of the simulation.</param>
    /// <returns>One distance for each level, in the order given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    /// <remarks>Source: Crow 1975, AMSAA Technical Report 138, Table 2 (which holds simulated values too, from fewer samples).</remarks>
    public static IReadOnlyList<double> CriticalValues(
        int events, IReadOnlyList<double> levels, int simulations = 100_000, int seed = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(events, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(simulations, 100);
        foreach (var level in levels)
            Confidences.Check(level, nameof(levels));
        double[] distances = [.. Simulated(Math.Min(events, LargestSample), simulations, seed).Order()];
        return [.. levels.Select(level => distances[Math.Min(simulations - 1, (int)Math.Floor((1 - level) * simulations))])];
    }

    private static IEnumerable<double> Simulated(int size, int simulations, int seed)
    {
        var random = new MersenneTwister(seed, threadSafe: false);
        var sample = new double[size];
        for (var k = 0; k < simulations; k++)
        {
            var sum = 0.0;
            for (var i = 0; i < size; i++)
            {
                sample[i] = Math.Log(1 - random.NextDouble());
                sum -= sample[i];
            }
            var unbiased = (size - 1) / sum;
            for (var i = 0; i < size; i++)
                sample[i] = Math.Exp(unbiased * sample[i]);
            yield return Distance(sample);
        }
    }

    /// <summary>The distance; sorts its argument.</summary>
    internal static double Distance(double[] even)
    {
        Array.Sort(even);
        double n = even.Length;
        var sum = 1 / (12 * n);
        for (var i = 0; i < even.Length; i++)
        {
            var gap = even[i] - (2 * i + 1) / (2 * n);
            sum += gap * gap;
        }
        return sum;
    }
}
