using System.Globalization;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Simulations;

/// <summary>Two bases compared, early failures and medians, where aircraft are alike and where they differ.</summary>
internal static class BaseComparison
{
    private const int Sets = 1000;
    private const double Age = 100;
    private const double Level = 0.05;

    private static readonly PartsAtABase Ordinary = new(900, 2.2);

    // Equal median 743 h; 8.9 % and 0.2 % fail by 100 h.
    private static readonly PartsAtABase EarlyByShape = new(743 / Math.Log(2), 1);
    private static readonly PartsAtABase WearOut = new(743 / Math.Pow(Math.Log(2), 1 / 2.9), 2.9);

    public static Section Section => new("Bases compared: early failures and median life", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine($"Gaskets at six places of each aircraft, looks every 70 to 130 h over 800 to 2,400 h, half of the first parts with 0 to 800 h on them;");
        output.WriteLine("scale 900 h and shape 2.2 where nothing else is said. Aircraft differ in hazard by a gamma distribution of the stated coefficient of variation.");
        output.WriteLine($"{Sets} pairs of bases a row (error of a share of 5 %: 0.7 points). `EarlyAndMedianContrast`, called at");
        output.WriteLine("q = 0.05 over its two tests (Benjamini and Hochberg); a test that its few early failures could never call (Tarone 1990) is not counted.");
        output.WriteLine();
        output.WriteLine("| bases | aircraft a base | variation | called | early called | median called | interval held |");
        output.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var aircraft in (int[])[10, 30])
        {
            foreach (var variation in (double[])[0, 0.5]) output.WriteLine(Row("alike", aircraft, aircraft, variation, Ordinary, Ordinary, 1));
        }

        foreach (var variation in (double[])[0, 0.5])
        {
            output.WriteLine(Row("alike, 3 aircraft against 27", 3, 27, variation, Ordinary, Ordinary, 1));
            output.WriteLine(Row(
                "alike, watched 200 to 500 h, four places", 10, 10, variation, Ordinary with { From = 200, To = 500, Places = 4 },
                Ordinary with { From = 200, To = 500, Places = 4 }, 1));
            output.WriteLine(Row("median halved", 10, 10, variation, Ordinary with { Scale = 450 }, Ordinary, 0.5));
            output.WriteLine(Row("median a quarter less", 30, 30, variation, Ordinary with { Scale = 675 }, Ordinary, 0.75));
            output.WriteLine(Row("8.9 % early against 0.2 %, equal median", 10, 10, variation, EarlyByShape, WearOut, 1));
            output.WriteLine(Row("8.9 % early against 0.2 %, equal median", 30, 30, variation, EarlyByShape, WearOut, 1));
            output.WriteLine(Row(
                "one in 11.5 fitted badly (40 h on average), the others alike", 10, 10, variation, WearOut with { BadlyFitted = 0.087 }, WearOut, 1));
        }

        output.WriteLine();
        output.WriteLine("In the last kind of row the truth for the interval is the ratio of the parts that were fitted well.");
        output.WriteLine("With few failures (the rows of 200 to 500 h) the tests call less often than stated, and the intervals hold more often.");
    }

    private static string Row(string bases, int here, int elsewhere, double variation, PartsAtABase first, PartsAtABase second, double truth)
    {
        var (called, early, median, held, compared) = (0, 0, 0, 0, 0);
        Parallel.For(0, Sets, set =>
        {
            var random = new Random(Seed(bases, here, variation, set));
            var (a, b) = (first.Draw(random, here, variation), second.Draw(random, elsewhere, variation));
            var course = EarlyAndMedianContrast.Course(LifeDistribution.Weibull, [.. a.Concat(b).SelectMany(u => u)]);
            var contrast = EarlyAndMedianContrast.Estimate(LifeDistribution.Weibull, course, a, b, Age);
            var (isEarly, isMedian) = Called(contrast);
            if (isEarly) Interlocked.Increment(ref early);
            if (isMedian) Interlocked.Increment(ref median);
            if (isEarly || isMedian) Interlocked.Increment(ref called);
            if (!contrast.Median.TryGetValue(out var ratio)) return;
            Interlocked.Increment(ref compared);
            if (ratio.MedianRatio.Interval.Contains(truth)) Interlocked.Increment(ref held);
        });
        return $"| {bases} | {(here == elsewhere ? here : $"{here} and {elsewhere}")} | {variation.ToString(CultureInfo.InvariantCulture)} "
            + $"| {Share(called, Sets)} | {Share(early, Sets)} | {Share(median, Sets)} "
            + $"| {Share(held, compared)} |";
    }

    private static (bool Early, bool Median) Called(EarlyAndMedianContrast contrast)
    {
        var hasEarly = contrast.Early.TryGetValue(out var early) && early.SmallestPValue <= Level;
        var hasMedian = contrast.Median.TryGetValue(out var median);
        List<double> tests = [];
        if (hasMedian) tests.Add(median!.PValue);
        if (hasEarly) tests.Add(early!.PValue);
        var q = FalseDiscovery.QValues(tests);
        return (hasEarly && q[^1] <= Level, hasMedian && q[0] <= Level);
    }

    internal static int Seed(string bases, int aircraft, double variation, int set)
    {
        var hash = 2166136261u;
        foreach (var c in string.Create(CultureInfo.InvariantCulture, $"{bases}|{aircraft}|{variation}|{set}")) hash = (hash ^ c) * 16777619u;
        return (int)(hash & 0x7FFFFFFF);
    }

    internal static string Share(int count, int of) =>
        of == 0 ? "none" : (100.0 * count / of).ToString("F1", CultureInfo.InvariantCulture) + " %";
}
