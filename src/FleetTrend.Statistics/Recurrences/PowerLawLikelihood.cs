namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Log-likelihood of a power-law process with the scale profiled out. Ages are divided by the oldest, so that powers stay
/// between zero and one; a difference of powers is taken through expm1, so that narrow and late windows keep their digits.
/// </summary>
internal sealed class PowerLawLikelihood
{
    private const double SmallestExponent = 1e-6;
    private const double LargestExponent = 1e6;

    private readonly (double LogStart, double LogStop)[] windows;
    private readonly (double LogStart, double LogStop, int Events)[] counted;
    private readonly double sumLog;

    /// <summary>Windows with exact event ages.</summary>
    public PowerLawLikelihood(IEnumerable<ObservationWindow> windows, IEnumerable<double> eventTimes)
    {
        var spans = windows.ToArray();
        Unit = spans.Max(w => w.Stop);
        this.windows = Array.ConvertAll(spans, w => (Math.Log(w.Start / Unit), Math.Log(w.Stop / Unit)));
        counted = [];
        foreach (var time in eventTimes)
        {
            sumLog += Math.Log(time / Unit);
            Events++;
        }
    }

    /// <summary>Windows with event counts only.</summary>
    public PowerLawLikelihood(IReadOnlyList<CountInterval> intervals)
    {
        Unit = intervals.Max(i => i.Stop);
        counted = [.. intervals.Select(i => (Math.Log(i.Start / Unit), Math.Log(i.Stop / Unit), i.Events))];
        windows = Array.ConvertAll(counted, c => (c.LogStart, c.LogStop));
        Events = intervals.Sum(i => (long)i.Events);
        IsCounted = true;
    }

    /// <summary>Events in all.</summary>
    public long Events { get; }

    /// <summary>The oldest age, by which all ages are divided, hours.</summary>
    public double Unit { get; }

    /// <summary>Whether only counts are known.</summary>
    public bool IsCounted { get; }

    /// <summary>The exponent at which the profile's slope is zero; zero or infinity where it rises to that edge.</summary>
    public double Maximize()
    {
        if (Slope(SmallestExponent) <= 0)
            return 0;
        if (Slope(LargestExponent) >= 0)
            return double.PositiveInfinity;
        return Root(b => Slope(b), SmallestExponent, LargestExponent);
    }

    /// <summary>Exponents at which the profile lies a given depth below its maximum.</summary>
    public (double Lower, double Upper) Below(double maximum, double depth)
    {
        var floor = Profile(maximum) - depth;
        var lower = Profile(SmallestExponent) >= floor ? 0 : Root(b => floor - Profile(b), SmallestExponent, maximum);
        var upper = Profile(LargestExponent) >= floor
            ? double.PositiveInfinity
            : Root(b => Profile(b) - floor, maximum, LargestExponent);
        return (lower, upper);
    }

    /// <summary>The mean count per unit at the oldest age, given the exponent.</summary>
    public double ScaledMean(double exponent) => Events / Power(exponent).Sum;

    /// <summary>Profile log-likelihood in the original ages; counts without the factorial term.</summary>
    public double Profile(double exponent)
    {
        var mean = ScaledMean(exponent);
        var common = Events * Math.Log(mean) - Events;
        if (!IsCounted)
            return common + Events * Math.Log(exponent) + (exponent - 1) * sumLog - Events * Math.Log(Unit);
        var sum = common;
        foreach (var (start, stop, events) in counted)
        {
            if (events > 0)
                sum += events * Math.Log(Difference(start, stop, exponent));
        }
        return sum;
    }

    /// <summary>Curvature sums at an exponent and a log scale: sum of u·m and u²·m, u log age over scale, m mean count.</summary>
    public (double First, double Second) Moments(double exponent)
    {
        var mean = ScaledMean(exponent);
        var logScale = -Math.Log(mean) / exponent;
        var (first, second) = (0.0, 0.0);
        foreach (var (start, stop) in windows)
        {
            Add(stop, 1);
            if (double.IsFinite(start))
                Add(start, -1);
        }
        return (first, second);

        void Add(double log, int sign)
        {
            var u = log - logScale;
            var m = sign * Math.Exp(exponent * u);
            first += u * m;
            second += u * u * m;
        }
    }

    /// <summary>
    /// Slope of the profile. The data and the mean counts each hold events over exponent, which cancel: both are taken without it, so that
    /// the slope keeps its digits near an exponent of zero.
    /// </summary>
    private double Slope(double exponent)
    {
        var (sum, slope) = Power(exponent);
        return (IsCounted ? CountedSlope(exponent) : sumLog) - Events * (slope / sum);
    }

    private double CountedSlope(double exponent)
    {
        var sum = 0.0;
        foreach (var (start, stop, events) in counted)
        {
            if (events > 0)
                sum += events * LogSlopeExcess(start, stop, exponent);
        }
        return sum;
    }

    private (double Sum, double Slope) Power(double exponent)
    {
        var (sum, slope) = (0.0, 0.0);
        foreach (var (start, stop) in windows)
        {
            var difference = Difference(start, stop, exponent);
            sum += difference;
            slope += difference == 0 ? 0 : difference * LogSlopeExcess(start, stop, exponent);
        }
        return (sum, slope);
    }

    private static double Difference(double logStart, double logStop, double exponent) =>
        double.IsFinite(logStart)
            ? -Math.Exp(exponent * logStop) * ElementaryFunctions.ExpM1(exponent * (logStart - logStop))
            : Math.Exp(exponent * logStop);

    /// <summary>Derivative by the exponent b of the logarithm of stop^b - start^b, less 1/b.</summary>
    private static double LogSlopeExcess(double logStart, double logStop, double exponent)
    {
        if (!double.IsFinite(logStart))
            return logStop - 1 / exponent;
        // With w = log stop - log start: log stop + w / (exp(b w) - 1) - 1 / b, which near b w = 0 is a series.
        var width = logStop - logStart;
        var x = exponent * width;
        var rest = x < 0.01
            ? -0.5 + x * (1.0 / 12 - x * x / 720)
            : 1 / ElementaryFunctions.ExpM1(x) - 1 / x;
        return logStop + width * rest;
    }

    /// <summary>Root between two exponents, on a logarithmic scale.</summary>
    private static double Root(Func<double, double> function, double low, double high) =>
        Math.Exp(RootSearch.Find(y => function(Math.Exp(y)), Math.Log(low), Math.Log(high)));
}
