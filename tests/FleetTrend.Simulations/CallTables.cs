using System.Globalization;

namespace FleetTrend.Simulations;

/// <summary>The tables of calls: false calls of ordinary fleets, and what is found of a change.</summary>
internal static class CallTables
{
    private static readonly CallFleet Design = new();
    private static readonly CallFleet Gaskets = new() { LifeShape = 2.2, LifeScale = 900, Locations = 6, LookHours = 100 };
    private static readonly CallFleet Couplings = new() { LifeShape = 3.5, LifeScale = 1500, Locations = 6 };
    private static readonly CallFleet Looseness = new() { Rate = 8, Locations = 8, Beside = [1, 3], Bunch = 0.2 };

    public static IEnumerable<Section> Sections =>
    [
        new("Ordinary fleets: nothing changes", output => Write(output, Ordinary, false)),
        new("A tail that gets worse", output => Write(output, Changes, true)),
        new("A part of a tail that gets worse", output => Write(output, Parts, true)),
        new("Parts with a life", output => Write(output, Lives, true)),
        new("A base that gets worse", output => Write(output, Bases, true)),
        EffectTables.Section,
        QuietTables.Section,
    ];

    /// <summary>What stands above the sections.</summary>
    public static void WriteHead(TextWriter output)
    {
        output.WriteLine("# What the calls find, and how often they call falsely");
        output.WriteLine();
        output.WriteLine("Written by `dotnet run -c Release --project tests/FleetTrend.Simulations -- src/FleetTrend.Statistics/CALLS.md`; seeds are fixed.");
        output.WriteLine("A part of a section's title after it makes that section again and keeps the others.");
        output.WriteLine();
        output.WriteLine("Each fleet has four years of records: aircraft whose levels are drawn from a gamma distribution of the stated shape, 470 h a year (each a fifth");
        output.WriteLine("more or less), looks every 90 to 110 h, 3.6 cracks per 1,000 h over 12 locations in two banks where nothing else is said. Norm, spread,");
        output.WriteLine("bunches, life distribution and limits are estimated from each fleet's own records, limits from 3,000 simulated aircraft-years. A change begins on");
        output.WriteLine("a day between the end of the second year and three weeks before the end of the third; found means a new call after it, counted to the middle");
        output.WriteLine("of the four weeks that made it. Every call of those four years counts, the first ones with little behind their norm too. Errors are one");
        output.WriteLine("Monte Carlo standard error. The limits: 1 flag and 5 watches per 50 unit-years.");
    }

    private static IEnumerable<(string Setting, CallFleet Fleet, int Fleets)> Ordinary =>
    [
        ("10 aircraft, shape 8", Design with { Aircraft = 10 }, 300),
        ("30 aircraft, all alike", Design with { Shape = double.PositiveInfinity }, 120),
        ("30 aircraft, shape 8", Design, 200),
        ("30 aircraft, shape 4", Design with { Shape = 4 }, 120),
        ("100 aircraft, shape 8", Design with { Aircraft = 100 }, 60),
        ("300 aircraft, shape 8", Design with { Aircraft = 300 }, 20),
        ("locations of rates 1 : 3 : 6", Design with { Beside = [1, 3, 6] }, 120),
        ("in bunches", Design with { Bunch = 0.3 }, 150),
        ("30 % of looks missed", Design with { Missed = 0.3 }, 120),
        ("half join late", Design with { Late = 0.5 }, 120),
        ("a tail of 30 at twice the norm from the start, alone", Design with { LevelOfFirst = 2 }, 400),
        ("gaskets", Gaskets, 120),
        ("couplings", Couplings, 120),
        ("looseness", Looseness, 120),
        ("gaskets, three bases of 10 as units", Gaskets with { AircraftOfABase = 10 }, 60),
    ];

    private static IEnumerable<(string Setting, CallFleet Fleet, int Fleets)> Changes =>
    [
        ("30 aircraft, shape 8, 2 times", Design with { Ratio = 2 }, 300),
        ("30 aircraft, shape 8, 3 times", Design with { Ratio = 3 }, 300),
        ("30 aircraft, shape 8, 5 times", Design with { Ratio = 5 }, 300),
        ("30 aircraft, shape 4, 3 times", Design with { Shape = 4, Ratio = 3 }, 200),
        ("30 aircraft, alike, 3 times", Design with { Shape = double.PositiveInfinity, Ratio = 3 }, 200),
        ("10 aircraft, shape 8, 5 times", Design with { Aircraft = 10, Ratio = 5 }, 300),
        ("100 aircraft, shape 8, 3 times in four", Design with { Aircraft = 100, Ratio = 3, Changing = 4 }, 50),
        ("in bunches, 3 times", Design with { Bunch = 0.3, Ratio = 3 }, 200),
        ("looseness, 3 times", Looseness with { Ratio = 3 }, 200),
    ];

    private static IEnumerable<(string Setting, CallFleet Fleet, int Fleets)> Parts =>
    [
        ("a bank, 3 times", Design with { Ratio = 3, Scope = 1 }, 200),
        ("a bank, 5 times", Design with { Ratio = 5, Scope = 1 }, 200),
        ("a location, 5 times", Design with { Ratio = 5, Scope = 3 }, 200),
        ("a location, 10 times", Design with { Ratio = 10, Scope = 3 }, 200),
    ];

    // A life that is shortened to a share has its hazard multiplied by that share to the power of minus the shape.
    private static IEnumerable<(string Setting, CallFleet Fleet, int Fleets)> Lives =>
    [
        ("gasket lives halved in one tail of 30", Gaskets with { Ratio = Math.Pow(2, 2.2) }, 200),
        ("gasket lives down to two thirds", Gaskets with { Ratio = Math.Pow(1.5, 2.2) }, 200),
        ("coupling lives halved in one tail of 30", Couplings with { Ratio = Math.Pow(2, 3.5) }, 200),
    ];

    private static IEnumerable<(string Setting, CallFleet Fleet, int Fleets)> Bases =>
    [
        ("welds 2 times at one base of three", Design with { Ratio = 2, Changing = 10, AircraftOfABase = 10 }, 60),
        ("welds 3 times at one base of three", Design with { Ratio = 3, Changing = 10, AircraftOfABase = 10 }, 60),
        ("gasket lives halved at one base of three", Gaskets with { Ratio = Math.Pow(2, 2.2), Changing = 10, AircraftOfABase = 10 }, 60),
        ("the same, each aircraft by itself", Gaskets with { Ratio = Math.Pow(2, 2.2), Changing = 10 }, 60),
    ];

    private static void Write(TextWriter output, IEnumerable<(string Setting, CallFleet Fleet, int Fleets)> rows, bool isChanging)
    {
        output.WriteLine(isChanging
            ? "| setting | changes | tier | found in 26 weeks | in 52 weeks | median weeks | part named right | week right within 8 | false calls per 50 |"
            : "| setting | fleets | unit-years | flags per 50 unit-years | watches per 50 unit-years | k estimated | dispersion estimated |");
        output.WriteLine(isChanging
            ? "| --- | ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: |"
            : "| --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var (setting, fleet, fleets) in rows)
        {
            Console.WriteLine($"  {setting}");
            var study = CallStudy.Run(fleet, fleets, 1);
            if (isChanging)
            {
                output.WriteLine(Found(setting, study, 0));
                output.WriteLine(Found(setting, study, 1));
            }
            else
            {
                output.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"| {setting} | {fleets} | {study.FalseYears:N0} | {False(study, 0)} | {False(study, 1)} | {study.MeanShape:F1} | {study.MeanDispersion:F2} |"));
            }
        }
    }

    private static string Found(string setting, CallStudy study, int tier)
    {
        var within = study.Weeks[tier].Count(w => w <= 52);
        var median = study.FoundWithin(tier, double.PositiveInfinity) < 0.5
            ? "not half found"
            : study.Weeks[tier].Order().ElementAt((study.Changes + 1) / 2 - 1).ToString("F0", CultureInfo.InvariantCulture);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {setting} | {study.Changes} | {(tier == 0 ? "flag" : "watch")} | {Share(study, tier, 26)} | {Share(study, tier, 52)} | {median} "
            + $"| {Of(study.RightScope[tier], within)} | {Of(study.RightWeek[tier], within)} | {(study.FalseYears > 0 ? False(study, tier) : "")} |");
    }

    private static string Share(CallStudy study, int tier, double weeks)
    {
        var share = study.FoundWithin(tier, weeks);
        return string.Create(CultureInfo.InvariantCulture, $"{share:F2} ± {Math.Sqrt(share * (1 - share) / study.Changes):F2}");
    }

    private static string False(CallStudy study, int tier) =>
        string.Create(CultureInfo.InvariantCulture, $"{study.Per50(tier):F2} ± {study.Per50Error(tier):F2}");

    private static string Of(int count, int of) => of == 0 ? "none found" : string.Create(CultureInfo.InvariantCulture, $"{(double)count / of:F2}");
}
