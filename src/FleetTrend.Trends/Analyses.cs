using FleetTrend.Trends.Changes;
using FleetTrend.Trends.DataProblems;
using FleetTrend.Trends.DueLooks;
using FleetTrend.Trends.Effects;
using FleetTrend.Trends.FailureChances;
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

/// <summary>The list of analyses: who adds one edits this list. Each stands in the folder of its name.</summary>
public static class Analyses
{
    /// <summary>The fleet table.</summary>
    public static FleetAnalysis Fleet { get; } = new();

    /// <summary>Rates per location, kind and type group.</summary>
    public static RateAnalysis Rates { get; } = new();

    /// <summary>Mean cumulative functions.</summary>
    public static RecurrenceAnalysis Recurrences { get; } = new();

    /// <summary>Places where a condition came back.</summary>
    public static RepeatAnalysis Repeats { get; } = new();

    /// <summary>One such place per base beside the others.</summary>
    public static RecurrenceContrastAnalysis RecurrenceContrasts { get; } = new();

    /// <summary>Lives of parts.</summary>
    public static PartLifeAnalysis PartLives { get; } = new();

    /// <summary>Part numbers of a kind beside each other.</summary>
    public static PartNumberAnalysis PartNumbers { get; } = new();

    /// <summary>How high or low aircraft, bases and locations run.</summary>
    public static LevelAnalysis Levels { get; } = new();

    /// <summary>Aircraft and bases that get worse now.</summary>
    public static ChangeAnalysis Changes { get; } = new();

    /// <summary>What is open now.</summary>
    public static OpenFindingAnalysis OpenFindings { get; } = new();

    /// <summary>Which looks are due.</summary>
    public static DueLookAnalysis DueLooks { get; } = new();

    /// <summary>Chances that parts fail before their next look.</summary>
    public static FailureChanceAnalysis FailureChances { get; } = new();

    /// <summary>Whether these chances came true.</summary>
    public static ChanceCalibrationAnalysis ChanceCalibrations { get; } = new();

    /// <summary>Whether repairs hold, by what was done.</summary>
    public static RepairAnalysis Repairs { get; } = new();

    /// <summary>How many spares each base will need.</summary>
    public static SpareAnalysis Spares { get; } = new();

    /// <summary>How soon leaks erode their port faces.</summary>
    public static LeakErosionAnalysis LeakErosions { get; } = new();

    /// <summary>When to renew parts, and how often to look at them.</summary>
    public static RenewalAgeAnalysis RenewalAges { get; } = new();

    /// <summary>Whether one cylinder or side is worse.</summary>
    public static PositionAnalysis Positions { get; } = new();

    /// <summary>Stop-drilled shrouds, and clamp bolts by the state of their hex.</summary>
    public static ShroudAnalysis Shrouds { get; } = new();

    /// <summary>Which way kinds of place go.</summary>
    public static GrowthAnalysis Growth { get; } = new();

    /// <summary>Whether what was done helped.</summary>
    public static EffectAnalysis Effects { get; } = new();

    /// <summary>How right forecasts were.</summary>
    public static ScoreAnalysis Scores { get; } = new();

    /// <summary>What is too quiet, and asked about.</summary>
    public static QuietAnalysis Quiet { get; } = new();

    /// <summary>Aircraft of which nothing comes any more.</summary>
    public static SilenceAnalysis Silence { get; } = new();

    /// <summary>What in the records does not add up.</summary>
    public static DataProblemAnalysis DataProblems { get; } = new();

    /// <summary>Those that a refresh computes.</summary>
    public static IReadOnlyList<Analysis> All { get; } =
    [
        Fleet, Rates, Recurrences, Repeats, RecurrenceContrasts, PartLives, PartNumbers, Levels, Changes, OpenFindings, DueLooks, FailureChances,
        ChanceCalibrations, Repairs, LeakErosions, RenewalAges, Growth, Spares, Positions, Shrouds, Effects, Scores, Quiet, Silence, DataProblems,
    ];
}
