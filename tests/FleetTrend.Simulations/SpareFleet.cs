using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Lives;
using FleetTrend.Records;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Simulations;

/// <summary>
/// Gaskets of one base over three years and the half year after: Weibull lives, looks every 90 to 110 h, what is found failed is replaced that day. Each
/// aircraft has its own pace, which wanders from quarter to quarter, times a season common to all.
/// </summary>
internal sealed record SpareFleet
{
    public const int PastDays = 3 * 365;
    public const int FutureDays = 180;
    private const double Shape = 2.2;
    private const double Scale = 900;

    public required int Aircraft { get; init; }

    public int Gaskets { get; init; } = 4;

    /// <summary>By how much the busiest day is busier than the mean, as a share.</summary>
    public double Season { get; init; }

    /// <summary>Standard deviation of the logarithm of what an aircraft flies in a quarter, beside its own pace.</summary>
    public double Wander { get; init; } = 0.15;

    /// <summary>Share of looks that find a failure at which all sisters that are good go out too.</summary>
    public double Sisters { get; init; }

    /// <summary>Coefficient of variation of the hazard between aircraft.</summary>
    public double Variation { get; init; }

    public static DateOnly Start { get; } = new(2023, 1, 1);

    public static DateOnly Today => Start.AddDays(PastDays);

    /// <summary>What is known of the fleet today, and the parts that then went in by day after it.</summary>
    public (AircraftObservations[] Known, int[] NeededByDay) Draw(Random random)
    {
        var (needed, phase) = (new int[FutureDays + 1], random.NextDouble());
        var known = Enumerable.Range(0, Aircraft).Select(i => One(random, $"ZZ-{i:000}", phase, needed)).ToArray();
        return (known, needed);
    }

    private AircraftObservations One(Random random, string registration, double phase, int[] needed)
    {
        var hours = Fly(random, phase);
        var scale = Scale * Math.Pow(Draws.Frailty(random, Variation == 0 ? double.PositiveInfinity : 1 / (Variation * Variation)), -1 / Shape);
        var parts = Enumerable.Range(0, Gaskets).Select(g => new Part(g, 0, 0, Math.Round(800 * random.NextDouble()), scale, random)).ToArray();
        var (lives, looks) = (new List<ObservedLife>(), new List<Hours>());
        var next = Draws.Between(random, 0, 110);
        for (var day = 1; day <= PastDays + FutureDays; day++)
        {
            if (day == PastDays + 1)
                lives.AddRange(parts.Select(p => p.Observe(registration, Start, hours[PastDays], LifeEnding.InService)));
            if (hours[day] < next)
                continue;
            next = hours[day] + Draws.Between(random, 90, 110);
            if (day <= PastDays)
                looks.Add(Hours.FromTenths((long)(10 * hours[day])));
            var replaced = Look(random, parts, day, hours[day], scale, ended => lives.Add(ended.Observe(registration, Start, hours[day], ended.Ending)));
            if (day > PastDays)
                needed[day - PastDays] += replaced;
        }

        return new AircraftObservations
        {
            Registration = registration,
            Base = "North",
            TypeGroup = "four",
            WatchStartDate = Start,
            Hours = new HoursByDay([.. Enumerable.Range(0, PastDays + 1).Where(d => (PastDays - d) % 7 == 0).Select(d =>
                new HoursOnDate(Start.AddDays(d), Tenths(hours[d])))]),
            Latest = new HoursOnDate(Today, Tenths(hours[PastDays])),
            Exposures = [.. Enumerable.Range(0, Gaskets).Select(g => Exposure(registration, g, looks))],
            Events = [],
            Lives = [.. lives.Where(l => l.StartDate <= Today).OrderBy(l => l.Location, StringComparer.Ordinal).ThenBy(l => l.StartDate)],
            Problems = [],
        };
    }

    /// <summary>Renews what has failed, and its sisters where it so falls; how many went in.</summary>
    private int Look(Random random, Part[] parts, int day, double hours, double scale, Action<Part> end)
    {
        var failed = Array.FindAll(parts, p => p.HasFailedAt(hours)).Length;
        var withSisters = failed > 0 && random.NextDouble() < Sisters;
        var replaced = 0;
        for (var g = 0; g < parts.Length; g++)
        {
            var isFailed = parts[g].HasFailedAt(hours);
            if (!isFailed)
                parts[g].SeeGood(hours);
            if (!isFailed && !withSisters)
                continue;
            parts[g].Ending = isFailed ? LifeEnding.Failed : LifeEnding.RemovedGood;
            if (day <= PastDays)
                end(parts[g]);
            parts[g] = new Part(g, day, hours, 0, scale, random);
            replaced++;
        }

        return replaced;
    }

    private double[] Fly(Random random, double phase)
    {
        var hours = new double[PastDays + FutureDays + 1];
        var (pace, quarter) = (Draws.Between(random, 1.2, 2.4), 1.0);
        for (var day = 1; day < hours.Length; day++)
        {
            if (day % 91 == 1)
                quarter = Math.Exp(Wander * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1));
            hours[day] = hours[day - 1] + pace * quarter * (1 + Season * Math.Sin(2 * Math.PI * (day / 364.0 + phase)));
        }

        return hours;
    }

    private static LocationExposure Exposure(string registration, int gasket, List<Hours> looks) => new()
    {
        Registration = registration,
        Location = Location(gasket),
        Kind = ShippedKinds.Get("gasket"),
        TypeGroup = "four",
        Base = "North",
        From = Hours.Zero,
        To = looks.Count > 0 ? looks[^1] : Hours.Zero,
        LookHours = looks,
        Evidence = [],
    };

    private static string Location(int gasket) => $"exhaust/cyl-{gasket + 1}/gasket";

    private static Hours Tenths(double hours) => Hours.FromTenths((long)Math.Round(10 * hours));

    private sealed class Part
    {
        private readonly int gasket;
        private readonly int startDay;
        private readonly double startHours;
        private readonly double entry;
        private readonly double failsAt;
        private double good;

        public Part(int gasket, int startDay, double startHours, double entry, double scale, Random random)
        {
            (this.gasket, this.startDay, this.startHours, this.entry, good) = (gasket, startDay, startHours, entry, entry);
            failsAt = scale * Math.Pow(Math.Pow(entry / scale, Shape) - Math.Log(1 - random.NextDouble()), 1 / Shape);
        }

        public LifeEnding Ending { get; set; } = LifeEnding.InService;

        public bool HasFailedAt(double hours) => failsAt <= Age(hours);

        public void SeeGood(double hours) => good = Age(hours);

        public ObservedLife Observe(string registration, DateOnly start, double hours, LifeEnding ending) => new()
        {
            Registration = registration,
            Location = Location(gasket),
            Kind = ShippedKinds.Get("gasket"),
            TypeGroup = "four",
            Base = "North",
            Ending = ending,
            Exclusion = ending != LifeEnding.Failed && good <= entry ? LifeExclusion.NeverExamined : null,
            Entry = Tenths(entry),
            LastGood = Tenths(good),
            FirstBad = ending == LifeEnding.Failed ? Tenths(Age(hours)) : null,
            HasStart = startDay > 0,
            StartDate = start.AddDays(startDay),
            AgeNow = ending == LifeEnding.InService ? Tenths(Age(hours)) : null,
            Evidence = [],
        };

        private double Age(double hours) => entry + hours - startHours;
    }
}
