using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Statistics.Decisions;
using FleetTrend.Trends.FailureChances;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Trends.Tests;

/// <summary>Chances that parts fail before their next look, and whether they come true.</summary>
public sealed class FailureChanceTests
{
    private const string Gasket = "exhaust/cyl-1/gasket";

    // By hand, from the law that the part lives show: with S(t) = exp(-(t/scale)^shape) a gasket last seen good at 250 h has the chance 1 - S(350)/S(250) at
    // 280 h. At 390 h its look is past, and the chance runs until now: 1 - S(390)/S(250). One fitted at 0 h and not looked at since has 1 - S(100).
    [Theory]
    [InlineData(250, 280, 350)]
    [InlineData(250, 390, 390)]
    [InlineData(0, 40, 100)]
    public void A_part_is_taken_from_its_last_good_look_to_its_next(double good, double now, double next)
    {
        LifeExclusion? exclusion = good == 0 ? LifeExclusion.NeverExamined : null;
        var inputs = Inputs(Fleet(new FleetBuilder("ZZ-NEW").Life("exhaust/cyl-9/gasket", "gasket", good, ageNow: now, exclusion: exclusion)));
        var shown = inputs.PartLives.Single(t => t.Base is null).Shown!;
        var part = Assert.Single(FleetBuilder.Find(Analyses.FailureChances, inputs).Single(c => c.Registration == "ZZ-NEW").Parts);
        Assert.Equal((good, now, next), (part.GoodHours, part.AgeHours, part.NextLookHours));
        Assert.Equal(1 - (1 - shown.ShareFailedBy(next)!.Value) / (1 - shown.ShareFailedBy(good)!.Value), part.Chance, 7);
        Assert.True(0 < part.Lower && part.Lower < part.Chance && part.Chance < part.Upper && part.Upper < 1);
    }

    // Three parts: the sum of the chances, and by hand the chance of at least one, 1 - (1 - p)(1 - q)(1 - r).
    [Fact]
    public void An_aircraft_has_the_sum_of_its_parts_the_likeliest_first()
    {
        var builder = new FleetBuilder("ZZ-NEW")
            .Life("exhaust/cyl-7/gasket", "gasket", 100, ageNow: 150).Life("exhaust/cyl-8/gasket", "gasket", 500, ageNow: 550)
            .Life("exhaust/cyl-9/gasket", "gasket", 300, ageNow: 350)
            .Life("exhaust/cyl-6/gasket", "gasket", 0, exclusion: LifeExclusion.AgeUnknown)
            .Life("exhaust/clamp-1", "clamp", 300, ageNow: 350);
        var chance = FleetBuilder.Find(Analyses.FailureChances, Inputs(Fleet(builder))).Single(c => c.Registration == "ZZ-NEW");
        Assert.Equal(["exhaust/cyl-8/gasket", "exhaust/cyl-9/gasket", "exhaust/cyl-7/gasket"], chance.Parts.Select(p => p.Location));
        Assert.Equal(chance.Parts.Sum(p => p.Chance), chance.Expected, 7);
        Assert.Equal(1 - chance.Parts.Aggregate(1.0, (none, p) => none * (1 - p.Chance)), chance.AnyChance, 7);
        Assert.True(chance.Lower < chance.Expected && chance.Expected < chance.Upper);
        Assert.Equal((1, 1), (chance.AgeUnknown, chance.TooFewFailures));
        Assert.Equal(3, chance.Evidence.Count);
        Assert.StartsWith("ZZ-NEW: ", FailureChanceWords.Statement(chance), StringComparison.Ordinal);
        Assert.Equal("1 of unknown age, 1 of kinds that have failed too seldom to tell", FailureChanceWords.Left(chance));
    }

    [Theory] // Fleets of one, two and five aircraft in which too little has failed; what is not known is not told.
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(5, 2)]
    public void Small_fleets_without_a_fit_have_no_chance(int aircraft, int failures)
    {
        var fleet = Enumerable.Range(0, aircraft).Select(i => new FleetBuilder($"ZZ-A0{i}").Life(Gasket, "gasket", 200, ageNow: 230)).ToList();
        for (var i = 0; i < failures; i++)
            fleet[^1].Life($"exhaust/cyl-{i + 2}/gasket", "gasket", 200 + i, 300 + i);
        var inputs = Inputs([.. fleet.Select(f => f.Build())]);
        var chances = FleetBuilder.Find(Analyses.FailureChances, inputs);
        Assert.Equal(aircraft, chances.Count);
        Assert.All(chances, c => Assert.Equal((0, 1, 0.0), (c.Parts.Count, c.TooFewFailures, c.Expected)));
        Assert.Equal("ZZ-A00: nothing can be said, 1 of kinds that have failed too seldom to tell", FailureChanceWords.Statement(chances[0]));
        var calibration = Assert.Single(FleetBuilder.Find(Analyses.ChanceCalibrations, inputs));
        Assert.Equal((0, 0, 0), (calibration.Looks, calibration.Groups.Count, calibration.Laws.Count));
        Assert.Contains("too few looks", FailureChanceWords.CameTrue(calibration), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fleet_without_parts_has_nothing_to_tell()
    {
        var inputs = Inputs([new FleetBuilder("ZZ-A00").Build()]);
        Assert.Empty(FleetBuilder.Find(Analyses.FailureChances, inputs));
        Assert.Empty(FleetBuilder.Find(Analyses.ChanceCalibrations, inputs));
    }

    // An hour is a day. Good at 100 and 200 h, found failed at 300 h. On day 250 it had been good until 200 h and was in service; on day 150, until 100 h; on
    // day 300 its failure was known; before day 0 it was not there. After day 150 came the looks of 200 and 300 h.
    [Fact]
    public void A_life_is_told_as_it_was_known_on_a_day()
    {
        var builder = new FleetBuilder("ZZ-A00").Watched(Gasket, "gasket", 0, 300, at: [100, 200, 300]).Life(Gasket, "gasket", 200, 300);
        var life = Assert.Single(FollowedLife.Find(Inputs([builder.Build()])));
        Assert.Null(life.AsOf(Day(-1)));
        Assert.Equal((0.0, null, LifeExclusion.NeverExamined), Known(50));
        Assert.Equal((100.0, null, null), Known(150));
        Assert.Equal((200.0, null, null), Known(250));
        Assert.Equal((200.0, 300.0, null), Known(300));
        Assert.Equal([(100, 200, false), (200, 300, true)], life.LooksAfter(Day(150)).Select(l => (l.Good.Value, l.Look.Value, l.Failed)));
        Assert.Equal([(200, 300, true)], life.LooksAfter(Day(200)).Select(l => (l.Good.Value, l.Look.Value, l.Failed)));
        Assert.Equal(3, life.LooksAfter(Day(-1)).Count());
        Assert.Empty(life.LooksAfter(Day(300)));

        (double, double?, LifeExclusion?) Known(int day) =>
            life.AsOf(Day(day)) is { } known ? (known.LastGood.Value, known.FirstBad?.Value, known.Exclusion) : default;
    }

    // Gaskets at one base last a quarter as long: its parts have a law of their own, and a greater chance at the same age.
    [Fact]
    public void A_base_whose_parts_last_differently_has_its_own_law()
    {
        List<AircraftObservations> fleet = [];
        for (var i = 0; i < 12; i++)
        {
            var (isSouth, builder) = (i % 2 == 1, new FleetBuilder($"ZZ-A{i:00}", i % 2 == 1 ? "south" : "north"));
            for (var g = 0; g < 6; g++)
            {
                var bad = (isSouth ? 200 : 800) + 10 * i + 40 * g;
                builder.Life($"exhaust/cyl-{g}/gasket", "gasket", bad - 50, bad);
            }

            fleet.Add(builder.Life("exhaust/cyl-9/gasket", "gasket", 150, ageNow: 200).Build());
        }

        var inputs = Inputs([.. fleet]);
        var laws = Assert.Single(FleetBuilder.Find(Analyses.ChanceCalibrations, inputs)).Laws;
        Assert.Contains(laws, l => l is { Kind: "gasket", Base: "south", Failures: 36 });
        var chances = FleetBuilder.Find(Analyses.FailureChances, inputs).ToLookup(c => c.Base, c => c.Parts[0].Chance);
        Assert.True(chances["south"].Min() > 10 * chances["north"].Max());
    }

    // The planted truth is Weibull 2.5, 700 h. Aircraft come with parts of up to 600 h that had not failed by then; looks are 60 to 140 h apart; what is found
    // failed is renewed, in one case of three with its sisters, which were good. Over 25 fleets, the chances by what was known on day 700 are held against
    // every look since: each tenth of them within binomial limits that 999 in 1,000 hold. Where the hazard of aircraft varies by 0.3, the looks of one aircraft
    // share it, which adds 0.09 of the square of its 0.7 failures to the variance of 0.56 that it has in a tenth, and a fit to some 60 failures of one fleet
    // is off by some 13 %, 2.6 % over 25 fleets, which is two thirds of a standard deviation of the 540 failures of a tenth: limits 1.2 times as far away.
    // Chances half as large as they are stand out in nearly every tenth.
    [Theory]
    [InlineData(0, 1, false)]
    [InlineData(0.3, 1.2, false)]
    [InlineData(0, 1, true)]
    public void Held_out_chances_come_true_in_every_tenth_of_them(double variation, double reach, bool isWrong)
    {
        List<ForeseenOutcome> outcomes = [];
        for (var seed = 1; seed <= 25; seed++)
        {
            var inputs = Inputs(Simulate(seed, variation));
            outcomes.AddRange(ChanceCalibrationAnalysis.HeldOut(inputs, FollowedLife.Find(inputs), Day(700)));
        }

        if (isWrong)
            outcomes = [.. outcomes.Select(o => o with { Chance = o.Chance / 2 })];
        var groups = Calibration.Compare(outcomes, confidence: 0.999);
        Assert.True(outcomes.Count > 10_000, $"{outcomes.Count} looks");
        if (isWrong)
            Assert.True(groups.Count(g => g.IsOff) >= 8);
        else
            Assert.All(groups, g => Assert.InRange(g.Found, g.Expected - reach * (g.Expected - g.Lower), g.Expected + reach * (g.Upper - g.Expected)));
    }

    [Fact] // The same over a year: a row per type group, with its groups and what was foreseen.
    public void A_type_group_has_its_calibration()
    {
        var asOf = new DateTimeOffset(FleetBuilder.Start.AddDays(1_064), TimeOnly.MinValue, TimeSpan.Zero);
        var calibration = Assert.Single(
            FleetBuilder.Find(Analyses.ChanceCalibrations, new TypeGroupInputs("four", Simulate(3, 0), asOf, new TrendParameters())));
        Assert.Equal(DateOnly.FromDateTime(asOf.UtcDateTime).AddDays(-364), calibration.FittedDate);
        Assert.Equal(10, calibration.Groups.Count);
        Assert.Equal((calibration.Looks, calibration.Found), (calibration.Groups.Sum(g => g.Looks), calibration.Groups.Sum(g => g.Found)));
        Assert.InRange(calibration.Found, 0.7 * calibration.Expected, 1.4 * calibration.Expected);
        var law = Assert.Single(calibration.Laws);
        Assert.Equal(("gasket", null), (law.Kind, law.Base));
    }

    /// <summary>Thirty aircraft over 1,400 h, an hour a day, each with five gaskets.</summary>
    private static AircraftObservations[] Simulate(int seed, double variation)
    {
        const double Shape = 2.5;
        const int Gaskets = 5;
        var random = new Random(seed);
        return [.. Enumerable.Range(0, 30).Select(i =>
        {
            var builder = new FleetBuilder($"ZZ-A{i:00}");
            var scale = 700 * Math.Pow(variation == 0 ? 1 : Gamma.Sample(random, Math.Pow(variation, -2), Math.Pow(variation, -2)), -1 / Shape);
            var parts = Enumerable.Range(0, Gaskets).Select(_ => random.Next(0, 600))
                .Select(age => (Start: 0, Entry: age, Good: age, Fails: Draw(age))).ToArray();
            List<double> looks = [];
            for (var look = random.Next(10, 140); look < 1_400; look += random.Next(60, 140))
            {
                looks.Add(look);
                var failed = new bool[Gaskets];
                for (var g = 0; g < Gaskets; g++)
                {
                    var age = parts[g].Entry + look - parts[g].Start;
                    failed[g] = parts[g].Fails <= age;
                    if (!failed[g])
                        parts[g].Good = age;
                }

                var sisters = failed.Any(f => f) && random.Next(3) == 0;
                for (var g = 0; g < Gaskets; g++)
                {
                    if (!failed[g] && !sisters)
                        continue;
                    End(g, failed[g] ? parts[g].Entry + look - parts[g].Start : null);
                    parts[g] = (look, 0, 0, Draw(0));
                }
            }

            for (var g = 0; g < Gaskets; g++)
            {
                End(g, null);
                builder.Watched($"exhaust/cyl-{g}/gasket", "gasket", 0, looks[^1], at: [.. looks]);
            }

            return builder.Build();

            // The age at failure of a part that is good at an age: exp(-(t/scale)^shape) over that of the age is uniform.
            double Draw(int good) => scale * Math.Pow(Math.Pow(good / scale, Shape) - Math.Log(1 - random.NextDouble()), 1 / Shape);

            void End(int g, double? bad) => builder.Life(
                $"exhaust/cyl-{g}/gasket", "gasket", parts[g].Good, bad, entry: parts[g].Entry, startDay: parts[g].Start,
                exclusion: bad is null && parts[g].Good == parts[g].Entry ? LifeExclusion.NeverExamined : null);
        })];
    }

    /// <summary>Twenty gaskets that failed between 210 and 780 h, and one more aircraft.</summary>
    private static AircraftObservations[] Fleet(FleetBuilder one)
    {
        var like = new FleetBuilder("ZZ-A00");
        for (var i = 0; i < 20; i++)
            like.Life($"exhaust/cyl-{i}/gasket", "gasket", 180 + 30 * i, 210 + 30 * i);
        return [like.Build(), one.Build()];
    }

    private static TypeGroupInputs Inputs(AircraftObservations[] aircraft) => new("four", aircraft, FleetBuilder.AsOf, new TrendParameters());

    private static DateOnly Day(int day) => FleetBuilder.Start.AddDays(day);
}
