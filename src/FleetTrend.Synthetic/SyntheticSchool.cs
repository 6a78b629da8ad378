using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>The invented school: thirty aircraft of two type groups at two bases over three years, with planted trouble.</summary>
public static class SyntheticSchool
{
    /// <summary>Layout that the first type group uses.</summary>
    public const string FourCylinderLayout = "four-cylinder-muffler-slip";

    /// <summary>Layout that the second type group uses.</summary>
    public const string SixCylinderLayout = "six-cylinder-muffler-clamp";

    private const string NorthBase = "Ostervane";
    private const string SouthBase = "Quillhatch Field";
    /// <summary>Name of the source that pushes the records.</summary>
    public const string SourceName = "synthetic-shop-cards";
    private const int AircraftCount = 30;
    private const int FourCylinderCount = 20;
    private const int WeldedTail = FourCylinderCount + 3;

    private static readonly TypeGroup Four = new() { Name = "synthetic-trainer-four", Title = "Synthetic four-cylinder trainer", Layout = FourCylinderLayout };
    private static readonly TypeGroup Six = new() { Name = "synthetic-tourer-six", Title = "Synthetic six-cylinder tourer", Layout = SixCylinderLayout };

    /// <summary>The fleet that a seed gives, with records up to a day. The same arguments give the same fleet.</summary>
    /// <param name="seed">Seed of all randomness.</param>
    /// <param name="lastDate">Day of the last records; the first are three years earlier.</param>
    /// <param name="layouts">The two layouts named here, as the server has them.</param>
    /// <exception cref="ArgumentException">A layout, or a kind of location in one, is missing.</exception>
    public static SyntheticFleet Generate(int seed, DateOnly lastDate, IReadOnlyCollection<Layout> layouts)
    {
        ArgumentNullException.ThrowIfNull(layouts);
        var four = Find(layouts, FourCylinderLayout);
        var six = Find(layouts, SixCylinderLayout);
        var random = new Random(seed);
        var planted = new List<PlantedTrouble>();
        var tails = Enumerable.Range(0, AircraftCount)
            .Select(i => Settle(i, lastDate, i < FourCylinderCount ? four : six, random))
            .ToList();
        PlantLooseHanger(tails, planted, lastDate);
        PlantWeldsThatHold(tails, planted, lastDate);
        PlantTorquePractice(tails, planted, lastDate);
        PlantQuietAircraft(tails, planted);
        PlantAircraftThatAlwaysRanHigh(tails, planted);

        var flights = tails.Select((tail, i) => new AircraftYears(tail, SourceName, new Random(seed + (1000 * (i + 1)))).Fly(lastDate)).ToList();
        List<DatedRecord> dated =
        [
            .. flights.SelectMany(f => f.Skip(1)).Append(TorquePractice(lastDate, six)).Concat(StockCounts(lastDate)).OrderBy(r => r.Date)
                .ThenBy(r => r.Record.Key.SourceRecordId, StringComparer.Ordinal),
        ];
        var actionDate = WeldsMadeAgain(lastDate);
        return new SyntheticFleet
        {
            School = "Ostervane Flight Training (synthetic: invented school, invented aircraft, invented findings)",
            Source = new Source { Name = SourceName, Title = "Synthetic shop cards" },
            TypeGroups = [Four, Six],
            Bases = [NorthBase, SouthBase],
            Records = [.. flights.Select(f => f[0].Record), .. dated.Select(r => r.Record)],
            Action = new PlannedAction(
                tails[WeldedTail].Registration, actionDate, "Hangers renewed, cracked welds made again. Synthetic.", flights.Count + dated.Count(r => r.Date <= actionDate)),
            Planted = planted,
        };
    }

    private static Layout Find(IReadOnlyCollection<Layout> layouts, string name) =>
        layouts.FirstOrDefault(l => l.Name == name) ?? throw new ArgumentException($"There is no layout '{name}'.", nameof(layouts));

    private static Tail Settle(int index, DateOnly lastDate, Layout layout, Random random)
    {
        var isFour = index < FourCylinderCount;
        var number = isFour ? index + 1 : index + 1 - FourCylinderCount;
        return new Tail
        {
            Registration = $"ZZ-{(isFour ? 'A' : 'B')}{number:00}",
            Base = index % 2 == 0 ? NorthBase : SouthBase,
            TypeGroup = isFour ? Four : Six,
            Layout = layout,
            WatchStart = lastDate.AddYears(-3).AddDays(random.Next(0, 120)),
            HoursAtStart = Math.Round(1000 + (4000 * random.NextDouble()), 1),
            HoursPerDay = 1.3 + (1.1 * random.NextDouble()),
            AgesKnown = random.NextDouble() < 0.7,
            MeterReplaced = index == 4,
            MisreadOnce = index == 9,
        };
    }

    private static DateOnly HangerLoose(DateOnly lastDate) => lastDate.AddDays(-300);

    private static DateOnly WeldsMadeAgain(DateOnly lastDate) => lastDate.AddDays(-450);

    private static DateOnly TorqueBetter(DateOnly lastDate) => lastDate.AddDays(-480);

    private static void PlantLooseHanger(List<Tail> tails, List<PlantedTrouble> planted, DateOnly lastDate)
    {
        const int index = 6;
        var since = HangerLoose(lastDate);
        tails[index] = tails[index] with { CrackFactor = 12, TroubledFrom = since, HoursPerDay = 2.2 };
        planted.Add(new PlantedTrouble(
            $"A loose hanger lets the exhaust of {tails[index].Registration} crack at one weld after another.",
            PlantedAnswer.Flag, tails[index].Registration, tails[index].Base, Four.Name, "", since));
    }

    private static void PlantWeldsThatHold(List<Tail> tails, List<PlantedTrouble> planted, DateOnly lastDate)
    {
        var since = lastDate.AddDays(-800);
        tails[WeldedTail] = tails[WeldedTail] with
        {
            CrackFactor = 12,
            TroubledFrom = since,
            TroubledUntil = WeldsMadeAgain(lastDate).AddDays(1),
            HoursPerDay = 2.4,
        };
        planted.Add(new PlantedTrouble(
            $"Welds of {tails[WeldedTail].Registration} cracked one after another, until its hangers were renewed and the welds made again: they hold.",
            PlantedAnswer.ActionHelped, tails[WeldedTail].Registration, tails[WeldedTail].Base, Six.Name, "", since));
    }

    private static void PlantTorquePractice(List<Tail> tails, List<PlantedTrouble> planted, DateOnly lastDate)
    {
        var better = TorqueBetter(lastDate);
        for (var i = 0; i < tails.Count; i++)
        {
            if (tails[i].Base == SouthBase)
                tails[i] = tails[i] with { GasketLifeFactor = 0.45, GasketsBetterFrom = ReferenceEquals(tails[i].TypeGroup, Six) ? better : null };
        }

        planted.Add(new PlantedTrouble(
            $"Torque practice at {SouthBase} makes exhaust gaskets of the four-cylinder trainer leak at less than half the hours.",
            PlantedAnswer.Flag, "", SouthBase, Four.Name, "gasket", null));
        planted.Add(new PlantedTrouble(
            "The same on the six-cylinder tourer, until the torque wrench was calibrated: gaskets fitted since last as long as elsewhere.",
            PlantedAnswer.PracticeHelped, "", SouthBase, Six.Name, "gasket", better));
    }

    private static void PlantQuietAircraft(List<Tail> tails, List<PlantedTrouble> planted)
    {
        const int index = 14;
        tails[index] = tails[index] with { WrittenShare = 0.02, HoursPerDay = 2.3 };
        planted.Add(new PlantedTrouble(
            $"Hardly anything that is found on {tails[index].Registration} is written down.",
            PlantedAnswer.Asked, tails[index].Registration, tails[index].Base, Four.Name, "", null));
    }

    private static void PlantAircraftThatAlwaysRanHigh(List<Tail> tails, List<PlantedTrouble> planted)
    {
        const int index = 11;
        tails[index] = tails[index] with { CrackFactor = 2 };
        planted.Add(new PlantedTrouble(
            $"{tails[index].Registration} always cracked twice as often as its like: no news, and no flag.",
            PlantedAnswer.NotCalled, tails[index].Registration, tails[index].Base, Four.Name, "", null));
    }

    /// <summary>Part number of what goes in at locations of a kind.</summary>
    /// <param name="kind">Name of the kind.</param>
    internal static string PartNumberOf(string kind) => $"{kind}, synthetic";

    /// <summary>Gaskets on the two shelves: few at the base where they leak soonest.</summary>
    private static IEnumerable<DatedRecord> StockCounts(DateOnly lastDate)
    {
        var day = lastDate.AddDays(-3);
        foreach (var (atBase, quantity) in new[] { (NorthBase, 40), (SouthBase, 6) })
        {
            var count = new StockCount
            {
                CountDate = new() { Year = day.Year, Month = day.Month, Day = day.Day },
                Base = atBase,
                PartNumber = PartNumberOf("gasket"),
                Quantity = quantity,
                LeadTimeDays = 21,
            };
            yield return new DatedRecord(
                day, new Record { Key = new RecordKey { Source = SourceName, SourceRecordId = $"shelf {atBase}", Revision = 1 }, StockCount = count });
        }
    }

    private static DatedRecord TorquePractice(DateOnly lastDate, Layout six)
    {
        var day = TorqueBetter(lastDate);
        var practice = new PracticeChange
        {
            ChangeDate = new() { Year = day.Year, Month = day.Month, Day = day.Day },
            Base = SouthBase,
            TypeGroup = Six.Name,
            What = "Torque wrench calibrated, gaskets tightened in two steps",
            Why = "Synthetic: invented, so that there is a change that helps.",
        };
        practice.Locations.AddRange(six.Locations.Where(l => l.Kind == "gasket").Select(l => new ChangedLocation { Location = l.Path }));
        return new DatedRecord(
            day, new Record { Key = new RecordKey { Source = SourceName, SourceRecordId = "practice torque", Revision = 1 }, PracticeChange = practice });
    }
}
