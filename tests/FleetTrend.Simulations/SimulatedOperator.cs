using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Lives;
using FleetTrend.Records;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Simulations;

/// <summary>
/// An operator with gaskets at two bases over years: Weibull lives, looks every 90 to 110 h, what is found failed is replaced that day; known as of
/// any day. From a
/// day on lives may be halved: every hour flown ages a part by two.
/// </summary>
internal sealed class SimulatedOperator
{
    private const double Shape = 2.2;
    private const double Scale = 900;

    private readonly List<Tail> tails = [];

    /// <summary>Draws one.</summary>
    /// <param name="random">Random numbers.</param>
    /// <param name="aircraft">How many aircraft; every second one is at South.</param>
    /// <param name="days">Days from <see cref="Start"/> on.</param>
    /// <param name="variation">Coefficient of variation of the hazard between aircraft.</param>
    /// <param name="halvedFrom">The day from which lives are halved; null for never.</param>
    /// <param name="gaskets">Gaskets on each aircraft.</param>
    public SimulatedOperator(Random random, int aircraft, int days, double variation = 0, int? halvedFrom = null, int gaskets = 4)
    {
        for (var i = 0; i < aircraft; i++)
        {
            var scale = Scale * Math.Pow(Draws.Frailty(random, variation == 0 ? double.PositiveInfinity : 1 / (variation * variation)), -1 / Shape);
            tails.Add(Fly(random, $"ZZ-{i:000}", i % 2 == 0 ? "North" : "South", days, gaskets, scale, halvedFrom));
        }
    }

    /// <summary>The first day.</summary>
    public static DateOnly Start { get; } = new(2021, 1, 1);

    /// <summary>The aircraft as they were known at the end of a day.</summary>
    public AircraftObservations[] KnownOn(DateOnly day) => [.. tails.Select(t => t.KnownOn(day.DayNumber - Start.DayNumber))];

    private static Tail Fly(Random random, string registration, string atBase, int days, int gaskets, double scale, int? halvedFrom)
    {
        var tail = new Tail(registration, atBase, new double[days + 1]);
        var (pace, quarter, halvedHours) = (Draws.Between(random, 1.2, 2.4), 1.0, double.PositiveInfinity);
        var parts = Enumerable.Range(0, gaskets).Select(g => new Part(g, 0, 0, Math.Round(800 * random.NextDouble()), Draw(0))).ToArray();
        foreach (var part in parts)
            part.FailsAt = Draw(part.Entry);
        var next = Draws.Between(random, 0, 110);
        for (var day = 1; day <= days; day++)
        {
            if (day % 91 == 1)
                quarter = Math.Exp(0.15 * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1));
            tail.Hours[day] = tail.Hours[day - 1] + pace * quarter;
            if (day == halvedFrom)
                halvedHours = tail.Hours[day - 1];
            if (tail.Hours[day] < next)
                continue;
            next = tail.Hours[day] + Draws.Between(random, 90, 110);
            tail.LookDays.Add(day);
            for (var g = 0; g < gaskets; g++)
            {
                var age = parts[g].AgeAt(tail.Hours[day]);
                if (age + Math.Max(0, tail.Hours[day] - Math.Max(halvedHours, parts[g].StartHours)) < parts[g].FailsAt)
                {
                    parts[g].Goods.Add((day, age));
                    continue;
                }

                parts[g].Failed = (day, age);
                tail.Parts.Add(parts[g]);
                parts[g] = new Part(g, day, tail.Hours[day], 0, Draw(0));
            }
        }

        tail.Parts.AddRange(parts);
        return tail;

        double Draw(double good) => scale * Math.Pow(Math.Pow(good / scale, Shape) - Math.Log(1 - random.NextDouble()), 1 / Shape);
    }

    private static Hours Tenths(double hours) => Hours.FromTenths((long)Math.Round(10 * hours));

    private sealed class Part(int gasket, int startDay, double startHours, double entry, double failsAt)
    {
        public int StartDay => startDay;

        public double StartHours => startHours;

        public double Entry => entry;

        public double FailsAt { get; set; } = failsAt;

        public List<(int Day, double Age)> Goods { get; } = [];

        public (int Day, double Age)? Failed { get; set; }

        public string Location => $"exhaust/cyl-{gasket + 1}/gasket";

        public double AgeAt(double hours) => entry + hours - startHours;

        public ObservedLife KnownOn(int day, Tail tail)
        {
            var good = Goods.FindLast(g => g.Day <= day) is { Day: > 0 } last ? last.Age : entry;
            var failed = Failed is { } end && end.Day <= day ? end.Age : (double?)null;
            return new ObservedLife
            {
                Registration = tail.Registration,
                Location = Location,
                Kind = ShippedKinds.Get("gasket"),
                TypeGroup = "four",
                Base = tail.Base,
                Ending = failed is null ? LifeEnding.InService : LifeEnding.Failed,
                Exclusion = failed is null && good <= entry ? LifeExclusion.NeverExamined : null,
                Entry = Tenths(entry),
                LastGood = Tenths(good),
                FirstBad = failed is { } bad ? Tenths(bad) : null,
                HasStart = startDay > 0,
                StartDate = Start.AddDays(startDay),
                AgeNow = failed is null ? Tenths(AgeAt(tail.Hours[day])) : null,
                Evidence = [],
            };
        }
    }

    private sealed record Tail(string Registration, string Base, double[] Hours)
    {
        public List<int> LookDays { get; } = [];

        public List<Part> Parts { get; } = [];

        public AircraftObservations KnownOn(int day) => new()
        {
            Registration = Registration,
            Base = Base,
            TypeGroup = "four",
            WatchStartDate = Start,
            Hours = new HoursByDay(
                [.. Enumerable.Range(0, day + 1).Where(d => d == day || d % 7 == 0 || LookDays.BinarySearch(d) >= 0).Select(OnDay)]),
            Latest = new HoursOnDate(Start.AddDays(day), Tenths(Hours[day])),
            Exposures = [.. Parts.Select(p => p.Location).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(l => Exposure(l, day))],
            Events = [],
            Lives =
            [
                .. Parts.Where(p => p.StartDay <= day).OrderBy(p => p.Location, StringComparer.Ordinal).ThenBy(p => p.StartDay)
                    .Select(p => p.KnownOn(day, this)),
            ],
            Problems = [],
        };

        private HoursOnDate OnDay(int day) => new(Start.AddDays(day), Tenths(Hours[day]));

        private LocationExposure Exposure(string location, int day)
        {
            List<Hours> looks = [.. LookDays.Where(d => d <= day).Select(d => Tenths(Hours[d]))];
            return new LocationExposure
            {
                Registration = Registration,
                Location = location,
                Kind = ShippedKinds.Get("gasket"),
                TypeGroup = "four",
                Base = Base,
                From = Records.Hours.Zero,
                To = looks.Count > 0 ? looks[^1] : Records.Hours.Zero,
                LookHours = looks,
                Evidence = [],
            };
        }
    }
}
