using System.Globalization;
using FleetTrend.Statistics.Effects;

namespace FleetTrend.Simulations;

/// <summary>The tables of effects: verdicts after an action and after a change of practice.</summary>
internal static class EffectTables
{
    private static readonly CallFleet Design = new() { Years = 6, Ratio = 5 };

    public static Section Section => new("Effect: whether what was done helped", Write);

    private static IEnumerable<(string Setting, Func<EffectStudy> Study)> Tails =>
    [
        ("from 5 times the norm back to it", () => EffectStudy.OfTail(Design with { LevelOfFirst = 1 }, 1, true, 1, 400)),
        ("the same, own level drawn", () => EffectStudy.OfTail(Design, 1, true, 1, 400)),
        ("the same, between two looks", () => EffectStudy.OfTail(Design, 1, false, 1, 400)),
        ("from 5 times to 2 times", () => EffectStudy.OfTail(Design, 2, true, 1, 400)),
        ("from 3 times back", () => EffectStudy.OfTail(Design with { Ratio = 3 }, 1, true, 1, 600)),
        ("stays at 5 times the norm", () => EffectStudy.OfTail(Design with { LevelOfFirst = 1 }, 5, true, 1, 400)),
        ("the same, own level drawn", () => EffectStudy.OfTail(Design, 5, true, 1, 400)),
        ("the same, between two looks", () => EffectStudy.OfTail(Design, 5, false, 1, 400)),
        ("stays at 3 times", () => EffectStudy.OfTail(Design with { Ratio = 3 }, 3, true, 1, 600)),
        ("stays at 5 times, all others down to a half", () => EffectStudy.OfTail(Design, 2.5, true, 0.5, 400)),
        ("nothing was wrong: called falsely", () => EffectStudy.OfTail(Design with { Ratio = 1 }, 1, true, 1, 500)),
    ];

    private static readonly double Halved = Math.Pow(2, 2.2);

    private static IEnumerable<(string Setting, Func<EffectStudy> Study)> Practices =>
    [
        ("lives from halved to ordinary", () => new EffectGaskets { Before = Halved }.Run(200)),
        ("nothing helped: lives stay halved", () => new EffectGaskets { Before = Halved, After = Halved }.Run(200)),
        ("nothing was wrong, nothing changed", () => new EffectGaskets().Run(400)),
        ("the same, at the base with most failures of the year before", () => new EffectGaskets { IsWorst = true }.Run(400)),
        ("the same, and lives doubled everywhere else", () => new EffectGaskets { Before = Halved, OthersAfter = 1 / Halved }.Run(200)),
        ("lives doubled at every base, at this one by the same", () => new EffectGaskets { After = 1 / Halved, OthersAfter = 1 / Halved }.Run(400)),
        ("every base touched, nothing changed", () => new EffectGaskets { IsEverywhere = true }.Run(400)),
        ("every base touched, lives doubled", () => new EffectGaskets { IsEverywhere = true, After = 1 / Halved }.Run(200)),
    ];

    private static void Write(TextWriter output)
    {
        output.WriteLine("A tail of 30 (shape 8) that is flagged within a year of getting worse; something is done at its next look. Verdicts are looked for every week of two");
        output.WriteLine("years, the first one stands. Limit of a flag: 1 in 50 aircraft-years.");
        output.WriteLine();
        Table(output, Tails);
        output.WriteLine();
        output.WriteLine("A base of 10 of 30 aircraft whose gaskets (six each, scale 900 h, shape 2.2) are fitted in another way from a day on; parts fitted before it stay as they were.");
        output.WriteLine("Before are the 20 periods of four weeks until then. Halved lives have 4.6 times the hazard.");
        output.WriteLine();
        Table(output, Practices);
    }

    private static void Table(TextWriter output, IEnumerable<(string Setting, Func<EffectStudy> Study)> rows)
    {
        output.WriteLine("| setting | cases | helped within 400 h | in 52 weeks | in 2 years | no better within 400 h | in 52 weeks | in 2 years | too early after 2 years |");
        output.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (setting, run) in rows)
        {
            Console.WriteLine($"  {setting}");
            var study = run();
            string Share(EffectVerdict verdict, double weeks = double.PositiveInfinity, double hours = double.PositiveInfinity) =>
                string.Create(CultureInfo.InvariantCulture, $"{study.Share(verdict, weeks, hours):F2}");
            output.WriteLine(
                $"| {setting} | {study.Verdicts.Count} | {Share(EffectVerdict.Helped, hours: 400)} | {Share(EffectVerdict.Helped, 52)} | {Share(EffectVerdict.Helped)} "
                + $"| {Share(EffectVerdict.NoBetter, hours: 400)} | {Share(EffectVerdict.NoBetter, 52)} | {Share(EffectVerdict.NoBetter)} | {Share(EffectVerdict.TooEarly)} |");
        }
    }
}
