using System.Globalization;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Simulations;

/// <summary>Two part numbers compared on the same aircraft, which may differ.</summary>
internal static class PartNumberStudy
{
    private const int Sets = 1000;
    private const double Age = 100;
    private const double Level = 0.05;

    private static readonly PartsAtABase Ordinary = new(900, 2.2) { Places = 3 };

    // Equal median 743 h; 8.9 % and 0.2 % fail by 100 h.
    private static readonly PartsAtABase EarlyByShape = new(743 / Math.Log(2), 1) { Places = 3 };
    private static readonly PartsAtABase WearOut = new(743 / Math.Pow(Math.Log(2), 1 / 2.9), 2.9) { Places = 3 };

    public static Section Section => new("Part numbers compared on the same aircraft", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine("As bases above, but every aircraft has three places with parts of the one number and three with parts of the other, and its own hazard counts for both.");
        output.WriteLine($"{Sets} fleets a row (error of a share of 5 %: 0.7 points). `EarlyAndLifeContrast`, called at 0.05 after Holm over its two tests; a test that its few");
        output.WriteLine("early failures could never call (Tarone 1990) is not counted.");
        output.WriteLine();
        output.WriteLine("| part numbers | aircraft | variation | called | early called | life called | ratio held |");
        output.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var variation in (double[])[0, 0.5])
        {
            foreach (var aircraft in (int[])[5, 10, 30])
                output.WriteLine(Row("alike", aircraft, variation, Ordinary, Ordinary, 1));
            output.WriteLine(Row("life halved", 10, variation, Ordinary with { Scale = 450 }, Ordinary, 0.5));
            output.WriteLine(Row("life a quarter less", 30, variation, Ordinary with { Scale = 675 }, Ordinary, 0.75));
            output.WriteLine(Row("8.9 % early against 0.2 %, equal median", 30, variation, EarlyByShape, WearOut, null));
            output.WriteLine(Row("one in 11.5 fitted badly (40 h on average), the others alike", 30, variation, WearOut with { BadlyFitted = 0.087 }, WearOut, 1));
        }

        output.WriteLine();
        output.WriteLine("Where shapes differ there is no one ratio of lives; the early failures are what is called there.");
    }

    private static string Row(string numbers, int aircraft, double variation, PartsAtABase first, PartsAtABase second, double? truth)
    {
        var (called, early, life, held, compared) = (0, 0, 0, 0, 0);
        Parallel.For(0, Sets, set =>
        {
            var units = first.DrawBeside(second, new Random(BaseComparison.Seed(numbers, aircraft, variation, set)), aircraft, variation);
            var course = EarlyAndMedianContrast.Course(LifeDistribution.Weibull, [.. units.SelectMany(u => u.First.Concat(u.Second))]);
            var contrast = EarlyAndLifeContrast.Estimate(LifeDistribution.Weibull, course, units, Age);
            var hasEarly = contrast.Early.TryGetValue(out var found) && found.SmallestPValue <= Level;
            var hasLife = contrast.Life.TryGetValue(out var ratio);
            List<double> tests = [];
            if (hasLife) tests.Add(ratio!.PValue);
            if (hasEarly) tests.Add(found!.PValue);
            var adjusted = FamilyWise.Holm(tests);
            var (isLife, isEarly) = (hasLife && adjusted[0] < Level, hasEarly && adjusted[^1] < Level);
            if (isEarly) Interlocked.Increment(ref early);
            if (isLife) Interlocked.Increment(ref life);
            if (isEarly || isLife) Interlocked.Increment(ref called);
            if (!hasLife || truth is not { } times) return;
            Interlocked.Increment(ref compared);
            if (ratio!.Ratio.Interval.Contains(times)) Interlocked.Increment(ref held);
        });
        return $"| {numbers} | {aircraft} | {variation.ToString(CultureInfo.InvariantCulture)} | {BaseComparison.Share(called, Sets)} | {BaseComparison.Share(early, Sets)} | {BaseComparison.Share(life, Sets)} "
            + $"| {(truth is null ? "no one ratio" : BaseComparison.Share(held, compared))} |";
    }
}
