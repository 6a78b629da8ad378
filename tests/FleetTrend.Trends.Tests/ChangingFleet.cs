using FleetTrend.Observations;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Trends.Tests;

/// <summary>
/// 20 aircraft at two bases, eight welds of 0.5 cracks per 1,000 h, levels of gamma shape 8, a look every 50 h over two years of an hour a day. Their
/// rates change as a test says. Seeds fixed.
/// </summary>
internal static class ChangingFleet
{
    /// <summary>The aircraft.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="factor">Times the rate, of aircraft, weld and hours.</param>
    public static AircraftObservations[] Build(int seed, Func<int, int, double, double> factor)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, 20).Select(i =>
        {
            var aircraft = new FleetBuilder($"ZZ-{i:000}", i % 2 == 1 ? "south" : "north");
            var level = i < 2 ? 1 : Gamma.Sample(random, 8, 8);
            for (var w = 0; w < 8; w++)
            {
                var location = $"exhaust/cyl-{w}/flange-weld";
                aircraft.Watched(location, "flange-weld", 0, 700, looks: 15);
                for (var look = 50; look <= 700; look += 50)
                {
                    for (var n = Poisson.Sample(random, level * factor(i, w, look) * 0.0005 * 50); n > 0; n--)
                        aircraft.Found(location, "flange-weld", look);
                }
            }

            return aircraft.Build();
        })];
    }

    /// <summary>Aircraft 0 cracks eight times as often from 530 h on; the rest are ordinary.</summary>
    public static AircraftObservations[] OneGetsWorse() => Build(1, (aircraft, _, hours) => (aircraft, hours) switch
    {
        (0, > 530) => 8,
        _ => 1,
    });

    /// <summary>
    /// The same aircraft with four gaskets each, of Weibull lives of shape 2 and scale 300 h; on aircraft 0 a fifth of that where fitted from 300 h
    /// on. A look every 50 h.
    /// </summary>
    public static AircraftObservations[] GasketsOfOneGetWorse()
    {
        var random = new Random(5);
        return [.. Enumerable.Range(0, 20).Select(i =>
        {
            var aircraft = new FleetBuilder($"ZZ-{i:000}", i % 2 == 1 ? "south" : "north");
            for (var g = 0; g < 4; g++)
            {
                for (var fitted = 0; fitted < 700;)
                {
                    var life = Weibull.Sample(random, 2, i == 0 && fitted >= 300 ? 60 : 300);
                    var found = (int)Math.Ceiling((fitted + life) / 50) * 50;
                    aircraft.Life($"exhaust/cyl-{g}/gasket", "gasket", Math.Min(found - 50, 700) - fitted, found <= 700 ? found - fitted : null, startDay: fitted);
                    fitted = found;
                }
            }

            return aircraft.Build();
        })];
    }
}
