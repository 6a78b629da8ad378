using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>An invented operator of any size, for measuring. Its records are made as they are read, day after day, so that they
/// need not fit into memory. The number of type groups changes in what group an aircraft is, and nothing else.</summary>
public sealed class SyntheticOperator
{
    /// <summary>Layout that all type groups use.</summary>
    public const string LayoutName = "four-cylinder-muffler-slip";

    /// <summary>Name of the source that pushes the records.</summary>
    public const string SourceName = "synthetic-operator-cards";

    private const int MostBases = 10;
    private const int TroubledEvery = 50;
    private const int MeterReplacedEvery = 25;

    private readonly int seed;
    private readonly DateOnly lastDate;
    private readonly List<Tail> tails;

    /// <summary>The operator that a seed gives, with records up to a day. The same arguments give the same records.</summary>
    /// <param name="seed">Seed of all randomness.</param>
    /// <param name="size">How large it is.</param>
    /// <param name="lastDate">Day of the last records.</param>
    /// <param name="layout">The layout named here, as the server has it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is less than 1.</exception>
    public SyntheticOperator(int seed, OperatorSize size, DateOnly lastDate, Layout layout)
    {
        ArgumentNullException.ThrowIfNull(size);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentOutOfRangeException.ThrowIfLessThan(size.Aircraft, 1, nameof(size));
        ArgumentOutOfRangeException.ThrowIfLessThan(size.Years, 1, nameof(size));
        ArgumentOutOfRangeException.ThrowIfLessThan(size.TypeGroups, 1, nameof(size));
        this.seed = seed;
        this.lastDate = lastDate;
        TypeGroups =
        [
            .. Enumerable.Range(1, size.TypeGroups).Select(i =>
                new TypeGroup { Name = $"synthetic-type-{i:00}", Title = $"Synthetic type {i}", Layout = layout.Name }),
        ];
        var random = new Random(seed);
        var firstDate = lastDate.AddYears(-size.Years);
        tails = [.. Enumerable.Range(0, size.Aircraft).Select(i => Settle(i, firstDate, layout, random))];
    }

    /// <summary>The source that pushes the records.</summary>
    public Source Source { get; } = new() { Name = SourceName, Title = "Synthetic operator cards" };

    /// <summary>Its type groups.</summary>
    public IReadOnlyList<TypeGroup> TypeGroups { get; }

    /// <summary>The registration marks of its aircraft.</summary>
    public IReadOnlyList<string> Registrations => [.. tails.Select(t => t.Registration)];

    /// <summary>The aircraft, then what is known of the parts with which they join, then everything else by date.</summary>
    public IEnumerable<Record> Records()
    {
        var flights = tails
            .Select((tail, i) => new AircraftYears(tail, SourceName, new Random(seed + (1000 * (i + 1)))))
            .ToList();
        var joins = flights.Select(f => f.Join()).ToList();
        var first = tails.Min(t => t.WatchStart);
        return joins.Select(j => j[0])
            .Concat(joins.SelectMany(j => j.Skip(1)))
            .Concat(Days(first).SelectMany(day => flights.SelectMany(f => f.FlyDay(day))))
            .Select(r => r.Record);
    }

    private IEnumerable<DateOnly> Days(DateOnly first)
    {
        for (var day = first; day <= lastDate; day = day.AddDays(1))
        {
            yield return day;
        }
    }

    private Tail Settle(int index, DateOnly firstDate, Layout layout, Random random)
    {
        var tail = new Tail
        {
            Registration = $"ZZ-{index:00000}",
            Base = $"Synthetic base {(index % MostBases) + 1}",
            TypeGroup = TypeGroups[index % TypeGroups.Count],
            Layout = layout,
            WatchStart = firstDate.AddDays(random.Next(0, 120)),
            HoursAtStart = Math.Round(1000 + (4000 * random.NextDouble()), 1),
            HoursPerDay = 0.9 + random.NextDouble(),
            AgesKnown = random.NextDouble() < 0.7,
            MeterReplaced = index % MeterReplacedEvery == 4,
            MisreadOnce = index % TroubledEvery == 9,
            GasketLifeFactor = index % MostBases == 0 ? 0.45 : 1,
        };
        return index % TroubledEvery == 6
            ? tail with
            {
                TroubledLocation = layout.Locations.First(l => l.Kind == "y-weld").Path,
                TroubledRatePer1000Hours = 10,
                TroubledAction = ActionKind.WeldRepaired,
            }
            : tail;
    }
}
