using System.Globalization;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Simulations;

/// <summary>Is a kind of place getting worse: limits of the growth, false calls where nothing changes, and what is found where something does.</summary>
internal static class GrowthStudy
{
    private const int Sets = 1000;
    private const int Fleets = 1000;
    private const int Kinds = 8;
    private const int FewestEvents = 5;

    public static Section Section => new("Growth: is a kind of place getting worse", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine("Aircraft of 250 to 650 h a year with four places of a kind, looked at every 70 to 130 h for three years, half of them from a day within the first two on;");
        output.WriteLine("they come with 0 to 6,000 h. Levels differ by a gamma distribution of shape 4 or not at all; findings come singly, or in bunches of two in the mean. `GrowthFit`");
        output.WriteLine($"over calendar time (log-linear) and over hours (power law); beside it the power law of counts with one level for all (`PowerLawProcess.FitCounts`). {Sets} sets a row;");
        output.WriteLine($"told from {FewestEvents} findings on {GrowthFit.FewestUnits} aircraft on.");
        output.WriteLine();
        output.WriteLine("| aircraft | findings (mean) | levels | findings come | planted: ratio in two years | told | calendar holds | planted: exponent | told | hours hold | one level for all |");
        output.WriteLine("| ---: | ---: | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (aircraft, findings) in ((int, double)[])[(5, 20), (10, 20), (10, 60), (30, 40), (60, 200)])
        {
            foreach (var (isAlike, isBunched) in ((bool, bool)[])[(true, false), (false, false), (false, true)])
            {
                foreach (var (ratio, exponent) in ((double, double)[])[(1, 1), (2, 1.8)])
                    output.WriteLine(Row(new GrowthFleet(aircraft, findings) { IsAlike = isAlike, IsBunched = isBunched }, ratio, exponent));
            }
        }

        output.WriteLine();
        output.WriteLine("With few findings the limits hold more often than stated. One level for all, as if aircraft were alike and findings came singly, would promise too much.");
        output.WriteLine();
        output.WriteLine($"Fleets with {Kinds} kinds of place, both clocks, p after Holm over all of them: share of fleets with any false call where nothing changes; share in which the one kind");
        output.WriteLine($"that does is called getting worse. Levels differ, findings come singly or in bunches, half of the aircraft join late. {Fleets} fleets a row.");
        output.WriteLine();
        output.WriteLine("| aircraft | findings of a kind (mean) | findings come | any false call | found: ratio 2 in two years | ratio 3 | ratio 5 | found: exponent 1.8 | exponent 3 |");
        output.WriteLine("| ---: | ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (aircraft, findings) in ((int, double)[])[(10, 20), (30, 40), (30, 100)])
        {
            foreach (var isBunched in (bool[])[false, true])
                output.WriteLine(Calls(new GrowthFleet(aircraft, findings) { IsBunched = isBunched }));
        }
    }

    private static string Row(GrowthFleet fleet, double ratio, double exponent)
    {
        var (yearly, told, held, hoursTold, hoursHeld, poolTold, poolHeld, count) = (Math.Log(ratio) / 2, 0, 0, 0, 0, 0, 0, 0L);
        for (var set = 0; set < Sets; set++)
        {
            var calendar = fleet.Draw(new Random(set), yearly, 1);
            count += Events(calendar.Calendar);
            if (Told(calendar.Calendar, GrowthLaw.LogLinear) is { } fit)
            {
                told++;
                if (fit.Growth.Interval.Contains(yearly)) held++;
            }

            var hours = fleet.Draw(new Random(Sets + set), 0, exponent).Hours;
            if (Told(hours, GrowthLaw.PowerLaw) is not { } power) continue;
            hoursTold++;
            if (power.Growth.Interval.Contains(exponent)) hoursHeld++;
            CountInterval[] counts = [.. hours.SelectMany(u => u).Select(s => new CountInterval(s.Start, s.Stop, s.Events))];
            if (!PowerLawProcess.FitCounts(counts).TryGetValue(out var pooled)) continue;
            poolTold++;
            if (pooled.ExponentInterval.Contains(exponent)) poolHeld++;
        }

        return string.Create(CultureInfo.InvariantCulture, $"| {fleet.Aircraft} | {(double)count / Sets:F0} | {(fleet.IsAlike ? "alike" : "differ")} | ")
            + string.Create(CultureInfo.InvariantCulture, $"{(fleet.IsBunched ? "in bunches" : "singly")} | {ratio} | {Percent(told, Sets)} | {Percent(held, told)} | ")
            + string.Create(CultureInfo.InvariantCulture, $"{exponent} | {Percent(hoursTold, Sets)} | {Percent(hoursHeld, hoursTold)} | {Percent(poolHeld, poolTold)} |");
    }

    private static string Calls(GrowthFleet fleet)
    {
        var falsely = 0;
        int[] found = new int[5];
        (double Ratio, double Exponent)[] planted = [(2, 1), (3, 1), (5, 1), (1, 1.8), (1, 3)];
        for (var set = 0; set < Fleets; set++)
        {
            var random = new Random(set);
            List<double> quiet = [.. Enumerable.Range(0, Kinds - 1).SelectMany(_ => Tests(fleet.Draw(random, 0, 1))).Select(t => t.PValue)];
            var last = Tests(fleet.Draw(random, 0, 1)).Select(t => t.PValue).ToList();
            if (quiet.Concat(last).ToList() is { Count: > 0 } all && FamilyWise.Holm(all).Any(p => p < 0.05)) falsely++;
            for (var i = 0; i < planted.Length; i++)
            {
                var tests = Tests(fleet.Draw(new Random(set), Math.Log(planted[i].Ratio) / 2, planted[i].Exponent)).ToList();
                var adjusted = FamilyWise.Holm([.. tests.Select(t => t.PValue), .. quiet]);
                var law = planted[i].Exponent == 1 ? GrowthLaw.LogLinear : GrowthLaw.PowerLaw;
                var none = law == GrowthLaw.PowerLaw ? 1 : 0;
                if (tests.Index().Any(t => t.Item.Law == law && adjusted[t.Index] < 0.05 && t.Item.Growth.Value > none)) found[i]++;
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"| {fleet.Aircraft} | {fleet.Findings} | {(fleet.IsBunched ? "in bunches" : "singly")} | {Percent(falsely, Fleets)} | ")
            + string.Join(" | ", found.Select(f => Percent(f, Fleets))) + " |";
    }

    private static IEnumerable<GrowthFit> Tests((IReadOnlyList<IReadOnlyList<GrowthSpan>> Calendar, IReadOnlyList<IReadOnlyList<GrowthSpan>> Hours) drawn) =>
        new[] { Told(drawn.Calendar, GrowthLaw.LogLinear), Told(drawn.Hours, GrowthLaw.PowerLaw) }.OfType<GrowthFit>();

    private static GrowthFit? Told(IReadOnlyList<IReadOnlyList<GrowthSpan>> units, GrowthLaw law) =>
        Events(units) >= FewestEvents
        && GrowthFit.Estimate(units, law, law == GrowthLaw.LogLinear ? GrowthLevels.Own : GrowthLevels.Common).TryGetValue(out var fit) ? fit : null;

    private static int Events(IReadOnlyList<IReadOnlyList<GrowthSpan>> units) => units.Sum(u => u.Sum(s => s.Events));

    private static string Percent(int count, int of) =>
        of == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / of:F1} %");
}
