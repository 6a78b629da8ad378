using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Trends.Tests;

/// <summary>A fleet with known truth: cracks arise at one rate at every weld, gaskets live by a Weibull law, looks come every 100 h.</summary>
internal sealed record SimulatedFleet
{
    public required int Seed { get; init; }

    public int Aircraft { get; init; } = 20;

    public int Welds { get; init; } = 8;

    public double CrackRate { get; init; } = 0.0005;

    /// <summary>Welds have the rate over this, the rate, and the rate times this, in turn; on all aircraft alike.</summary>
    public double WeldSpread { get; init; } = 1;

    public double GasketShape { get; init; } = 2;

    public double GasketScale { get; init; } = 700;

    /// <summary>Rate of the first weld of the first aircraft over that of all others.</summary>
    public double TroubleFactor { get; init; } = 1;

    /// <summary>Scale of gasket life at the second base over that at the first.</summary>
    public double SouthLifeFactor { get; init; } = 1;

    /// <summary>Share of new gaskets at the second base that were fitted badly: they fail at 40 h on average, and change no other.</summary>
    public double SouthBadlyFitted { get; init; }

    /// <summary>Coefficient of variation of the gasket hazard between aircraft.</summary>
    public double AircraftSpread { get; init; }

    /// <summary>Most hours by which a look interval differs from a hundred.</summary>
    public double Jitter { get; init; }

    public int Gaskets { get; init; } = 4;

    /// <summary>A day after all looks: an hour is a day, and each aircraft is looked at over 800 to 2,000 h.</summary>
    public DateTimeOffset AsOf { get; } = new(FleetBuilder.Start.AddDays(2_000), TimeOnly.MinValue, TimeSpan.Zero);

    public TrendSnapshot Compute() => FleetBuilder.Compute(Build(), new TrendParameters(), AsOf, "test");

    /// <summary>Answers of one analysis, settled.</summary>
    public IReadOnlyList<T> Settle<T>(Analysis<T> analysis)
        where T : notnull => FleetBuilder.Settle(analysis, new TypeGroupInputs("four", Build(), AsOf, new TrendParameters()));

    public IReadOnlyList<AircraftObservations> Build()
    {
        var random = new Random(Seed);
        return [.. Enumerable.Range(0, Aircraft).Select(i => One(random, i))];
    }

    private AircraftObservations One(Random random, int index)
    {
        var isSouth = index % 2 == 1;
        double from = random.Next(0, 3000);
        var aircraft = new FleetBuilder($"ZZ-{index:000}", isSouth ? "south" : "north", hoursAtStart: from);
        var to = from + random.Next(8, 20) * 100;
        for (var w = 0; w < Welds; w++)
            Weld(random, aircraft, $"exhaust/cyl-{w}/flange-weld", from, to, CrackRate * Math.Pow(WeldSpread, (w % 3) - 1) * (index == 0 && w == 0 ? TroubleFactor : 1));
        var hazard = AircraftSpread == 0 ? 1 : Gamma.Sample(random, Math.Pow(AircraftSpread, -2), Math.Pow(AircraftSpread, -2));
        var scale = GasketScale * (isSouth ? SouthLifeFactor : 1) * Math.Pow(hazard, -1 / GasketShape);
        for (var g = 0; g < Gaskets; g++)
            Gasket(random, aircraft, $"exhaust/cyl-{g}/gasket", from, to, scale, isSouth ? SouthBadlyFitted : 0);
        return aircraft.Build(latest: new HoursOnDate(FleetBuilder.Start.AddDays((int)(to - from)), Hours.From(to)));
    }

    private static void Weld(Random random, FleetBuilder aircraft, string location, double from, double to, double rate)
    {
        aircraft.Watched(location, "flange-weld", from, to);
        double? repaired = null;
        var ordinal = 1;
        for (var at = from + Exponential(random) / rate; at <= to; at += Exponential(random) / rate)
        {
            var found = Math.Min(to, from + Math.Ceiling((at - from) / 100) * 100);
            aircraft.Found(
                location, "flange-weld", found, Condition.Crack, ordinal++, repaired is null ? null : ActionKind.WeldRepaired, repaired,
                ActionKind.WeldRepaired);
            repaired = found;
        }
    }

    private void Gasket(Random random, FleetBuilder aircraft, string location, double from, double to, double scale, double badlyFitted)
    {
        List<double> looks = [];
        for (var installed = from; installed < to;)
        {
            var isBad = badlyFitted > 0 && random.NextDouble() < badlyFitted;
            var age = isBad ? 40 * Exponential(random) : scale * Math.Pow(Exponential(random), 1 / GasketShape);
            var (lastGood, look) = (0.0, LookInterval(random));
            while (look < age)
            {
                looks.Add(Tenth(installed + look));
                (lastGood, look) = (look, Tenth(look + LookInterval(random)));
            }

            if (installed + look > to)
            {
                aircraft.Life(location, "gasket", Math.Min(lastGood, to - installed), startDay: (int)(installed - from), ageNow: Tenth(to - installed));
                break;
            }

            looks.Add(Tenth(installed + look));
            aircraft.Life(location, "gasket", lastGood, look, startDay: (int)(installed - from));
            installed = Tenth(installed + look);
        }

        aircraft.Watched(location, "gasket", from, to, at: [.. looks.Where(l => l <= to)]);
    }

    /// <summary>Hours between two looks: a hundred, or somewhat off where looks are jittered.</summary>
    private double LookInterval(Random random) => Jitter == 0 ? 100 : Tenth(100 - Jitter + (2 * Jitter * random.NextDouble()));

    private static double Tenth(double hours) => Math.Round(hours * 10) / 10;

    private static double Exponential(Random random) => -Math.Log(1 - random.NextDouble());
}
