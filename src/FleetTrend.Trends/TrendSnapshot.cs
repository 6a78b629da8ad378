using FleetTrend.Observations.DataProblems;
using FleetTrend.Trends.DueLooks;
using FleetTrend.Trends.Effects;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Fleet;
using FleetTrend.Trends.Growth;
using FleetTrend.Trends.LeakErosions;
using FleetTrend.Trends.Levels;
using FleetTrend.Trends.OpenFindings;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.PartNumbers;
using FleetTrend.Trends.Positions;
using FleetTrend.Trends.Quiet;
using FleetTrend.Trends.Rates;
using FleetTrend.Trends.RecurrenceContrasts;
using FleetTrend.Trends.Recurrences;
using FleetTrend.Trends.RenewalAges;
using FleetTrend.Trends.Repairs;
using FleetTrend.Trends.Repeats;
using FleetTrend.Trends.Scores;
using FleetTrend.Trends.Shrouds;
using FleetTrend.Trends.Silence;
using FleetTrend.Trends.Spares;

namespace FleetTrend.Trends;

/// <summary>What the fleet was doing as of a moment: everything that reports and pages show.</summary>
public sealed record TrendSnapshot
{
    /// <summary>The moment of knowledge (UTC): only records accepted by then were seen.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>The choices behind it.</summary>
    public required TrendParameters Parameters { get; init; }

    /// <summary>Version of the code that computed it.</summary>
    public required string CodeVersion { get; init; }

    /// <summary>Every aircraft, by registration.</summary>
    public required IReadOnlyList<FleetLine> Fleet { get; init; }

    /// <summary>Rates per location, per kind and per type group, for each condition that was seen.</summary>
    public required IReadOnlyList<RateTrend> Rates { get; init; }

    /// <summary>Mean cumulative number of cracks per location of a type group.</summary>
    public required IReadOnlyList<RecurrenceTrend> Recurrences { get; init; }

    /// <summary>Places where the same condition came back after an action, most often first.</summary>
    public required IReadOnlyList<RepeatLocation> Repeats { get; init; }

    /// <summary>Each of those places beside the mean of the others there; empty in trends stored before there was one.</summary>
    public IReadOnlyList<RecurrenceContrast> RecurrenceContrasts { get; init; } = [];

    /// <summary>Life distributions per part kind: the type group as a whole, and each base.</summary>
    public required IReadOnlyList<PartLifeTrend> PartLives { get; init; }

    /// <summary>How high or low aircraft, bases and locations run, most probably high first; empty in trends stored before there were levels.</summary>
    public IReadOnlyList<Level> Levels { get; init; } = [];

    /// <summary>Part numbers of a kind beside each other, those with a difference first; empty in trends stored before they were compared.</summary>
    public IReadOnlyList<PartNumberTrend> PartNumbers { get; init; } = [];

    /// <summary>What is open now, leaks first; empty in trends stored before it was listed.</summary>
    public IReadOnlyList<OpenFinding> OpenFindings { get; init; } = [];

    /// <summary>Which looks are due, what is past its interval first; empty in trends stored before it was told.</summary>
    public IReadOnlyList<DueLook> DueLooks { get; init; } = [];

    /// <summary>Chances that parts fail before their next look, the most failures first; empty in trends stored before they were told.</summary>
    public IReadOnlyList<FailureChance> FailureChances { get; init; } = [];

    /// <summary>Whether such chances came true, by type group; empty as above.</summary>
    public IReadOnlyList<ChanceCalibration> ChanceCalibrations { get; init; } = [];

    /// <summary>Whether repairs hold, by kind of location, condition and action, those with a difference first; empty in trends stored before it was
    /// told.</summary>
    public IReadOnlyList<RepairTrend> Repairs { get; init; } = [];

    /// <summary>Spares that each base will need, what falls short first; empty in trends stored before they were foreseen.</summary>
    public IReadOnlyList<SpareNeed> Spares { get; init; } = [];

    /// <summary>How soon leaks erode their port faces, by type group; empty as above.</summary>
    public IReadOnlyList<LeakErosion> LeakErosions { get; init; } = [];

    /// <summary>Whether one cylinder or side is worse, those with a difference first; empty as above.</summary>
    public IReadOnlyList<PositionTrend> Positions { get; init; } = [];

    /// <summary>Stop-drilled shrouds and clamp bolts, by type group; empty as above.</summary>
    public IReadOnlyList<ShroudTrend> Shrouds { get; init; } = [];

    /// <summary>When to renew parts and how often to look at them, those where renewing helps first; empty as above.</summary>
    public IReadOnlyList<RenewalAge> RenewalAges { get; init; } = [];

    /// <summary>Which way kinds of place go, what gets worse first; empty as above.</summary>
    public IReadOnlyList<GrowthTrend> Growth { get; init; } = [];

    /// <summary>Whether what was done helped, the newest action first; empty in trends stored before there was one.</summary>
    public IReadOnlyList<Effect> Effects { get; init; } = [];

    /// <summary>How right forecasts were by quarter, the newest first; empty until there is one to hold against something.</summary>
    public IReadOnlyList<Score> Scores { get; init; } = [];

    /// <summary>How quiet each aircraft and base is, what is asked about first; empty in trends stored before there was a question.</summary>
    public IReadOnlyList<Quietness> Quiet { get; init; } = [];

    /// <summary>Aircraft of which nothing comes any more; empty in trends stored before they were asked about.</summary>
    public IReadOnlyList<AircraftSilence> Silences { get; init; } = [];

    /// <summary>What deserves attention by these numbers; the store decides which are new.</summary>
    public required IReadOnlyList<ProposedFlag> Flags { get; init; }

    /// <summary>What in the records does not add up.</summary>
    public required IReadOnlyList<DataProblem> DataProblems { get; init; }

    /// <summary>What of it is about one type group; parts that several share are about each of them.</summary>
    public TrendSnapshot OfTypeGroup(string name)
    {
        var aircraft = Fleet.Where(l => l.TypeGroup == name).Select(l => l.Registration).ToHashSet(StringComparer.Ordinal);
        return this with
        {
            Fleet = Of(Fleet, l => l.TypeGroup),
            Rates = Of(Rates, r => r.TypeGroup),
            Recurrences = Of(Recurrences, r => r.TypeGroup),
            Repeats = Of(Repeats, r => r.TypeGroup),
            RecurrenceContrasts = Of(RecurrenceContrasts, c => c.TypeGroup),
            PartLives = Of(PartLives, l => l.TypeGroup),
            Levels = Of(Levels, l => l.TypeGroup),
            OpenFindings = Of(OpenFindings, f => f.TypeGroup),
            DueLooks = Of(DueLooks, d => d.TypeGroup),
            FailureChances = Of(FailureChances, c => c.TypeGroup),
            ChanceCalibrations = Of(ChanceCalibrations, c => c.TypeGroup),
            Repairs = Of(Repairs, r => r.TypeGroup),
            Spares = [.. Spares.Where(s => s.TypeGroups.Contains(name, StringComparer.Ordinal))],
            LeakErosions = Of(LeakErosions, e => e.TypeGroup),
            Positions = [.. Positions.Where(p => p.TypeGroups.Contains(name, StringComparer.Ordinal))],
            Shrouds = Of(Shrouds, s => s.TypeGroup),
            RenewalAges = Of(RenewalAges, a => a.TypeGroup),
            Growth = Of(Growth, g => g.TypeGroup),
            Effects = Of(Effects, e => e.TypeGroup),
            Scores = Of(Scores, s => s.TypeGroup),
            Quiet = Of(Quiet, q => q.TypeGroup),
            Silences = Of(Silences, s => s.TypeGroup),
            Flags = Of(Flags, f => f.TypeGroup),
            DataProblems =
                [.. DataProblems.Where(p => aircraft.Contains(p.Registration) || (p.OtherRegistration is { } other && aircraft.Contains(other)))],
        };

        IReadOnlyList<T> Of<T>(IReadOnlyList<T> all, Func<T, string?> typeGroupOf) => [.. all.Where(item => typeGroupOf(item) == name)];
    }
}
