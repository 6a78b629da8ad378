using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>The invented school: thirty aircraft of two type groups at two bases over three years, with planted trouble.</summary>
public static class SyntheticSchool
{
    /// <summary>Layout that the first type group uses.</summary>
    public const string FourCylinderLayout = "four-cylinder-muffler-slip";

    /// <summary>Layout that the second type group uses.</summary>
    public const string SixCylinderLayout = "six-cylinder-muffler-clamp";

    private const string NorthBase = "Brackenmoor";
    private const string SouthBase = "Tolverne Field";
    /// <summary>Name of the source that pushes the records.</summary>
    public const string SourceName = "synthetic-shop-cards";
    private const int AircraftCount = 30;
    private const int FourCylinderCount = 20;

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
        PlantLooseHanger(tails, planted);
        PlantStopDrilledShroud(tails, planted);
        PlantTorquePractice(tails, planted);

        var flights = tails.Select((tail, i) => new AircraftYears(tail, SourceName, new Random(seed + (1000 * (i + 1)))).Fly(lastDate)).ToList();
        return new SyntheticFleet
        {
            School = "Brackenmoor Flight Training (synthetic: invented school, invented aircraft, invented findings)",
            Source = new Source { Name = SourceName, Title = "Synthetic shop cards" },
            TypeGroups = [Four, Six],
            Bases = [NorthBase, SouthBase],
            Records =
            [
                .. flights.Select(f => f[0].Record),
                .. flights.SelectMany(f => f.Skip(1)).OrderBy(r => r.Date)
                    .ThenBy(r => r.Record.Key.SourceRecordId, StringComparer.Ordinal).Select(r => r.Record),
                MirrorPractice(lastDate),
            ],
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

    private static void PlantLooseHanger(List<Tail> tails, List<PlantedTrouble> planted)
    {
        const int index = 6;
        var location = FirstOfKind(tails[index].Layout, "y-weld");
        tails[index] = tails[index] with { TroubledLocation = location, TroubledRatePer1000Hours = 10, TroubledAction = ActionKind.WeldRepaired };
        planted.Add(new PlantedTrouble(
            $"A loose hanger on {tails[index].Registration} makes the weld {location} crack again after each weld repair.",
            FlagKind.AirframeDrift, tails[index].Registration, tails[index].Base, location, string.Empty));
    }

    private static void PlantStopDrilledShroud(List<Tail> tails, List<PlantedTrouble> planted)
    {
        const int index = FourCylinderCount + 3;
        var location = FirstOfKind(tails[index].Layout, "shroud-edge");
        tails[index] = tails[index] with { TroubledLocation = location, TroubledRatePer1000Hours = 10, TroubledAction = ActionKind.StopDrilled };
        planted.Add(new PlantedTrouble(
            $"The heat shroud of {tails[index].Registration} is kept alive by stop drills at {location}.",
            FlagKind.RepeatLocation, tails[index].Registration, tails[index].Base, location, string.Empty));
    }

    private static void PlantTorquePractice(List<Tail> tails, List<PlantedTrouble> planted)
    {
        for (var i = 0; i < tails.Count; i++)
        {
            if (tails[i].Base == SouthBase)
            {
                tails[i] = tails[i] with { GasketLifeFactor = 0.45 };
            }
        }

        planted.Add(new PlantedTrouble(
            $"Torque practice at {SouthBase} makes exhaust gaskets leak at less than half the hours.",
            FlagKind.BasePartLife, string.Empty, SouthBase, string.Empty, "gasket"));
    }

    /// <summary>A change of practice that changes nothing that is found.</summary>
    private static Record MirrorPractice(DateOnly lastDate)
    {
        var day = lastDate.AddYears(-1);
        return new Record
        {
            Key = new RecordKey { Source = SourceName, SourceRecordId = "practice mirror", Revision = 1 },
            PracticeChange = new PracticeChange
            {
                ChangeDate = new() { Year = day.Year, Month = day.Month, Day = day.Day },
                Base = NorthBase,
                TypeGroup = Four.Name,
                What = "A mirror on a telescopic arm for every look at the exhaust",
                Why = "Synthetic: an invented change that does nothing to the numbers.",
            },
        };
    }

    private static string FirstOfKind(Layout layout, string kind) =>
        layout.Locations.FirstOrDefault(l => l.Kind == kind)?.Path
            ?? throw new ArgumentException($"Layout '{layout.Name}' has no location of kind '{kind}'.", nameof(layout));
}
