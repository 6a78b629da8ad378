using System.Globalization;
using FleetTrend.Statistics.Quiet;

namespace FleetTrend.Simulations;

/// <summary>The tables of too quiet: how often an ordinary aircraft is asked about, and how soon one of which too little is written down.</summary>
internal static class QuietTables
{
    private static readonly CallFleet Design = new() { Years = 6, Rate = 8, Locations = 24 };
    private static readonly CallFleet Sparse = Design with { Rate = 3.6 };

    public static Section Section => new("Too quiet: far fewer findings than the others would have", Write);

    private static IEnumerable<(string Setting, IReadOnlyList<CallFleet> Classes, int Fleets)> Ordinary =>
    [
        ("10 aircraft, all alike", [Design with { Aircraft = 10, Shape = double.PositiveInfinity }], 300),
        ("10 aircraft, shape 8", [Design with { Aircraft = 10 }], 300),
        ("10 aircraft, shape 4", [Design with { Aircraft = 10, Shape = 4 }], 300),
        ("30 aircraft, all alike", [Design with { Shape = double.PositiveInfinity }], 100),
        ("30 aircraft, shape 8", [Design], 100),
        ("30 aircraft, shape 4", [Design with { Shape = 4 }], 100),
        ("100 aircraft, all alike", [Design with { Aircraft = 100, Shape = double.PositiveInfinity }], 30),
        ("100 aircraft, shape 8", [Design with { Aircraft = 100 }], 30),
        ("100 aircraft, shape 4", [Design with { Aircraft = 100, Shape = 4 }], 30),
        ("30 aircraft, shape 8, 3.6 findings per 1,000 h", [Sparse], 100),
        ("30 aircraft, three classes of 2.7 with levels of their own, shape 4", Three(4, 1), 100),
        ("in bunches", [Design with { Bunch = 0.3 }], 100),
        ("30 % of looks missed", [Design with { Missed = 0.3 }], 100),
        ("half join late", [Design with { Late = 0.5 }], 100),
        ("three bases of 10 as units", [Design with { AircraftOfABase = 10 }], 100),
    ];

    private static IEnumerable<(string Setting, IReadOnlyList<CallFleet> Classes, int Fleets, double FromYear)> Quiet =>
    [
        ("30 aircraft, shape 8, none, from the start", [Design with { Ratio = 0 }], 400, -1),
        ("the same, a fifth", [Design with { Ratio = 0.2 }], 400, -1),
        ("30 aircraft, shape 8, none, from the third year on", [Design with { Ratio = 0 }], 400, 2),
        ("the same, a fifth", [Design with { Ratio = 0.2 }], 400, 2),
        ("30 aircraft, all alike, none, from the third year on", [Design with { Ratio = 0, Shape = double.PositiveInfinity }], 400, 2),
        ("the same, a fifth", [Design with { Ratio = 0.2, Shape = double.PositiveInfinity }], 400, 2),
        ("30 aircraft, shape 4, none, from the third year on", [Design with { Ratio = 0, Shape = 4 }], 400, 2),
        ("the same, a fifth", [Design with { Ratio = 0.2, Shape = 4 }], 400, 2),
        ("10 aircraft, shape 8, none, from the third year on", [Design with { Ratio = 0, Aircraft = 10 }], 400, 2),
        ("the same, a fifth", [Design with { Ratio = 0.2, Aircraft = 10 }], 400, 2),
        ("100 aircraft, shape 8, none, from the third year on", [Design with { Ratio = 0, Aircraft = 100, Changing = 4 }], 60, 2),
        ("the same, a fifth", [Design with { Ratio = 0.2, Aircraft = 100, Changing = 4 }], 60, 2),
        ("30 aircraft, shape 8, 3.6 findings per 1,000 h, none, from the third year on", [Sparse with { Ratio = 0 }], 400, 2),
        ("the same, a fifth", [Sparse with { Ratio = 0.2 }], 400, 2),
        ("three classes of 2.7 with levels of their own, shape 4, a fifth, from the third year on", Three(4, 0.2), 400, 2),
        ("half of the findings, 30 aircraft, shape 8, from the third year on", [Design with { Ratio = 0.5 }], 400, 2),
        ("one base of three, a fifth, from the third year on", [Design with { Ratio = 0.2, Changing = 10, AircraftOfABase = 10 }], 100, 2),
    ];

    private static IReadOnlyList<CallFleet> Three(double shape, double ratio) =>
        [.. Enumerable.Repeat(Design with { Rate = 2.7, Locations = 8, Shape = shape, Ratio = ratio }, 3)];

    private static void Write(TextWriter output)
    {
        output.WriteLine("Six years of records, 8 findings per 1,000 h over all classes of condition and 24 locations where nothing else is said: 3.8 a year for each aircraft.");
        output.WriteLine("Norm, spread and bunches are estimated anew every four weeks from what is known then. A question is new where the aircraft is on the list and was not four");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"weeks before. Asked about from odds of {QuietOdds.Limit} on, with at most a third of what the others would have."));
        output.WriteLine();
        output.WriteLine("| ordinary fleets | fleets | unit-years | questions per 50 unit-years |");
        output.WriteLine("| --- | ---: | ---: | ---: |");
        foreach (var (setting, classes, fleets) in Ordinary)
        {
            Console.WriteLine($"  {setting}");
            var study = QuietStudy.Run(classes, fleets, 0);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"| {setting} | {fleets} | {study.Years:N0} | {study.Per50:F2} ± {study.Per50Error:F2} |"));
        }

        output.WriteLine();
        output.WriteLine("The share of what is there that is written down, of one aircraft where nothing else is said:");
        output.WriteLine();
        output.WriteLine("| written down | cases | asked about in 52 weeks | in 104 weeks | ever | questions per 50 unit-years about the others |");
        output.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (setting, classes, fleets, from) in Quiet)
        {
            Console.WriteLine($"  {setting}");
            var study = QuietStudy.Run(classes, fleets, from);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {setting} | {study.QuietUnits} | {study.AskedWithin(52):F2} | {study.AskedWithin(104):F2} | {study.AskedWithin(9999):F2} | {study.Per50:F2} ± {study.Per50Error:F2} |"));
        }
    }
}
