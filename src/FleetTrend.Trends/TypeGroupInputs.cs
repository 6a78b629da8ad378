using FleetTrend.Observations;
using FleetTrend.Records.Flags;
using FleetTrend.Trends.Changes;
using FleetTrend.Trends.Expectations;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Groups;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Repeats;
using FleetTrend.Trends.Scores;

namespace FleetTrend.Trends;

/// <summary>What an analysis may know: the aircraft of one type group as observed at a moment, and the choices.</summary>
public sealed class TypeGroupInputs
{
    private readonly Dictionary<string, string> bases;
    private readonly Lazy<TypeGroupObservations> observations;
    private readonly Lazy<IReadOnlyList<RepeatLocation>> repeats;
    private readonly Lazy<IReadOnlyList<PartLifeTrend>> partLives;
    private readonly Lazy<RateLooks> rateLooks;
    private readonly Lazy<LifeLaws> lifeLaws;
    private readonly Lazy<IReadOnlyList<FollowedLife>> followedLives;
    private readonly Lazy<GroupExpectations> expectations;
    private readonly Lazy<IReadOnlyList<Change>> changes;
    private readonly Lazy<ChangeLimits> aircraftLimits;
    private readonly Lazy<ChangeLimits> baseLimits;

    /// <summary>Makes it.</summary>
    /// <param name="typeGroup">Name of the type group.</param>
    /// <param name="aircraft">
    /// Every aircraft that is or ever was in it, with all that was observed of it; what it had in other groups is told apart by each row.
    /// </param>
    /// <param name="asOf">The moment of knowledge.</param>
    /// <param name="parameters">The choices.</param>
    /// <exception cref="ArgumentException">An aircraft appears twice.</exception>
    public TypeGroupInputs(string typeGroup, IEnumerable<AircraftObservations> aircraft, DateTimeOffset asOf, TrendParameters parameters)
    {
        TypeGroup = typeGroup;
        Aircraft = [.. aircraft.OrderBy(a => a.Registration, StringComparer.Ordinal)];
        AsOfDate = DateOnly.FromDateTime(asOf.UtcDateTime);
        Parameters = parameters;
        for (var i = 1; i < Aircraft.Count; i++)
        {
            if (Aircraft[i].Registration == Aircraft[i - 1].Registration)
                throw new ArgumentException($"Aircraft {Aircraft[i].Registration} appears twice.", nameof(aircraft));
        }

        bases = Aircraft.ToDictionary(a => a.Registration, a => a.Base, StringComparer.Ordinal);
        rateLooks = new(() => new RateLooks(this));
        expectations = new(() => GroupExpectations.Build(this));
        observations = new(() => TypeGroupObservations.Sort(typeGroup, Aircraft));
        repeats = new(() => [.. RepeatAnalysis.Find(this)]);
        lifeLaws = new(() => LifeLaws.Fit(this, Aircraft.SelectMany(a => a.Lives).Where(l => l.TypeGroup == TypeGroup)));
        followedLives = new(() => FollowedLife.Find(this));
        partLives = new(() => [.. PartLifeAnalysis.Fit(this, _ => true)]);
        aircraftLimits = new(() => ChangeLimits.OfAircraft(Expectations, Parameters));
        baseLimits = new(() => ChangeLimits.OfBases(Expectations, Parameters));
        changes = new(() => [.. ChangeAnalysis.FindChanges(this)]);
    }

    /// <summary>Name of the type group.</summary>
    public string TypeGroup { get; }

    /// <summary>Its aircraft, by registration: also those that were in it once.</summary>
    public IReadOnlyList<AircraftObservations> Aircraft { get; }

    /// <summary>The day of the moment of knowledge (UTC).</summary>
    public DateOnly AsOfDate { get; }

    /// <summary>The choices.</summary>
    public TrendParameters Parameters { get; }

    /// <summary>What people have settled about flags, with what was done about them; of the whole fleet.</summary>
    public IReadOnlyList<FlagClosing> FlagClosings { get; init; } = [];

    /// <summary>Practice changes of the whole fleet.</summary>
    public IReadOnlyList<ObservedPracticeChange> PracticeChanges { get; init; } = [];

    /// <summary>The newest stock count of each base and part number of the whole fleet.</summary>
    public IReadOnlyList<ObservedStockCount> StockCounts { get; init; } = [];

    /// <summary>Its forecasts as they were published before the day of the moment, and kept.</summary>
    public KeptForecasts Forecasts { get; init; } = KeptForecasts.None;

    /// <summary>Steps of the lives of its flags before the day of the moment, in the order in which they came.</summary>
    public IReadOnlyList<FlagStep> FlagSteps { get; init; } = [];

    /// <summary>How many type groups the fleet has.</summary>
    public int TypeGroupCount { get; init; } = 1;

    /// <summary>Those of the aircraft that are in it now.</summary>
    public IEnumerable<AircraftObservations> Present => Aircraft.Where(a => a.TypeGroup == TypeGroup);

    /// <summary>Present base of an aircraft.</summary>
    internal string BaseOf(string registration) => bases[registration];

    /// <summary>By location and aircraft.</summary>
    internal TypeGroupObservations Observations => observations.Value;

    /// <summary>Places where a condition came back.</summary>
    internal IReadOnlyList<RepeatLocation> Repeats => repeats.Value;

    /// <summary>Lives of parts, to be settled.</summary>
    internal IReadOnlyList<PartLifeTrend> PartLives => partLives.Value;

    /// <summary>Life distributions behind the chances of parts.</summary>
    internal LifeLaws LifeLaws => lifeLaws.Value;

    /// <summary>Lives that take part in a fit, with all their looks.</summary>
    internal IReadOnlyList<FollowedLife> FollowedLives => followedLives.Value;

    /// <summary>Aircraft and bases that get worse, called or not.</summary>
    internal IReadOnlyList<Change> Changes => changes.Value;

    /// <summary>Looks at locations, on their days.</summary>
    internal RateLooks RateLooks => rateLooks.Value;

    /// <summary>Found and expected by unit, location and period.</summary>
    internal GroupExpectations Expectations => expectations.Value;

    /// <summary>Limits of the calls of aircraft.</summary>
    internal ChangeLimits AircraftLimits => aircraftLimits.Value;

    /// <summary>Limits of the calls of bases.</summary>
    internal ChangeLimits BaseLimits => baseLimits.Value;
}
