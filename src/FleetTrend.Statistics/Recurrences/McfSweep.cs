using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// One pass over all ages in order. The influence of unit i is Z_i(t) = sum over its events of 1/n minus the sum, over
/// ages at which it was watched, of d/n². While it is watched Z_i(t) = B_i - A(t), with A the running sum of d/n² and
/// B_i changing only at its own events and entries; while it is not, Z_i stands still. So the sum of Z_i² over all units
/// follows from three running sums, and a standard error at every event age costs no more than the pass itself.
/// </summary>
internal sealed class McfSweep(IReadOnlyList<RecurrenceUnit> units, McfVariance variance)
{
    private readonly double[] offset = new double[units.Count];
    private readonly McfUnbiasedVariance? unbiased = variance == McfVariance.Unbiased ? new McfUnbiasedVariance(units.Count) : null;
    private int atRisk;
    private double sumOffset;
    private double sumOffsetSquared;
    private double sumStanding;
    private double drift;
    private double normal;
    private double student;
    private int studentAt;

    /// <summary>All points, ascending in age; null where the unbiased variance is asked for and does not exist.</summary>
    public McfPoint[]? Run(double confidence, McfLimits limits)
    {
        normal = Quantile.NormalTwoSided(confidence);
        var (entryTime, entryUnit) = Sorted(units, u => u.WindowSpan.Length, (u, k) => u.WindowSpan[k].Start);
        var (exitTime, exitUnit) = Sorted(units, u => u.WindowSpan.Length, (u, k) => u.WindowSpan[k].Stop);
        var (eventTime, eventUnit) = Sorted(units, u => u.EventSpan.Length, (u, k) => u.EventSpan[k]);
        var points = new List<McfPoint>(eventTime.Length);
        var (entry, exit) = (0, 0);
        var (value, poisson) = (0.0, 0.0);
        for (var first = 0; first < eventTime.Length;)
        {
            var time = eventTime[first];
            // An exit at an earlier age comes before an entry at the same earlier age; both come before this age's events.
            while (exit < exitTime.Length && exitTime[exit] < time)
            {
                while (entry < entryTime.Length && entryTime[entry] < exitTime[exit])
                    Enter(entryUnit[entry++]);
                Exit(exitUnit[exit++]);
            }
            while (entry < entryTime.Length && entryTime[entry] < time)
                Enter(entryUnit[entry++]);

            var last = first;
            while (last < eventTime.Length && eventTime[last] == time)
                Jump(eventUnit[last++]);
            var events = last - first;
            unbiased?.Step(eventUnit.AsSpan(first, events), atRisk);
            drift += events / ((double)atRisk * atRisk);
            value += (double)events / atRisk;
            poisson += events / ((double)atRisk * atRisk);
            var square = variance switch { McfVariance.Robust => Influence(), McfVariance.Poisson => poisson, _ => unbiased!.Value };
            if (!(square >= 0))
                return null;
            var error = Math.Sqrt(square);
            points.Add(Limited(time, events, value, error, confidence, limits));
            first = last;
        }
        return [.. points];
    }

    private McfPoint Limited(double time, int events, double value, double error, double confidence, McfLimits limits)
    {
        var margin = limits == McfLimits.LogarithmicStudent ? StudentMargin(error, confidence) : normal * error;
        return limits == McfLimits.Plain
            ? new(time, atRisk, events, value, error, value - margin, value + margin)
            : new(time, atRisk, events, value, error, value * Math.Exp(-margin / value), value * Math.Exp(margin / value));
    }

    private double StudentMargin(double error, double confidence)
    {
        if (studentAt != atRisk)
        {
            studentAt = atRisk;
            student = StudentQuantile(Math.Max(1, atRisk - 1), confidence);
        }
        double n = units.Count;
        return student * error * Math.Sqrt(n / Math.Max(1, n - 1));
    }

    /// <summary>For many degrees of freedom the quantile's expansion in their inverse is exact to 1e-9 and costs nothing.</summary>
    private double StudentQuantile(int freedom, double confidence)
    {
        if (freedom <= 500)
            return Math.Sqrt(freedom * Quantile.BetaOdds(confidence, 0.5, freedom / 2.0)); // t² over freedom is beta odds
        var (z, square) = (normal, normal * normal);
        return z * (1 + (square + 1) / (4.0 * freedom) + ((5 * square + 16) * square + 3) / (96.0 * freedom * freedom));
    }

    private double Influence() =>
        Math.Max(0, sumOffsetSquared - 2 * drift * sumOffset + atRisk * drift * drift) + Math.Max(0, sumStanding);

    private void Enter(int unit)
    {
        var standing = offset[unit];
        sumStanding -= standing * standing;
        Add(unit, standing + drift);
        unbiased?.Enter(unit);
        atRisk++;
    }

    private void Exit(int unit)
    {
        var standing = offset[unit] - drift;
        Remove(unit);
        offset[unit] = standing;
        sumStanding += standing * standing;
        unbiased?.Exit(unit);
        atRisk--;
    }

    private void Jump(int unit)
    {
        var before = offset[unit];
        Remove(unit);
        Add(unit, before + 1.0 / atRisk);
    }

    private void Add(int unit, double value)
    {
        offset[unit] = value;
        sumOffset += value;
        sumOffsetSquared += value * value;
    }

    private void Remove(int unit)
    {
        sumOffset -= offset[unit];
        sumOffsetSquared -= offset[unit] * offset[unit];
    }

    private static (double[] Times, int[] Units) Sorted(
        IReadOnlyList<RecurrenceUnit> units, Func<RecurrenceUnit, int> count, Func<RecurrenceUnit, int, double> time)
    {
        var total = 0;
        for (var i = 0; i < units.Count; i++)
            total += count(units[i]);
        var times = new double[total];
        var owners = new int[total];
        var at = 0;
        for (var i = 0; i < units.Count; i++)
        {
            var n = count(units[i]);
            for (var k = 0; k < n; k++)
            {
                times[at] = time(units[i], k);
                owners[at++] = i;
            }
        }
        Array.Sort(times, owners);
        return (times, owners);
    }
}
