using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Records.Sources;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Changes;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Fleet;
using FleetTrend.Trends.Levels;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Rates;
using FleetTrend.Trends.RecurrenceContrasts;
using FleetTrend.Trends.Recurrences;
using FleetTrend.Trends.Repeats;
using static FleetTrend.Reports.Tests.InventedFigures;

namespace FleetTrend.Reports.Tests;

/// <summary>
/// Synthetic: a small invented fleet at two invented bases, with one of everything that a report can show.
/// The numbers are made up; nothing is checked against them but the words they turn into.
/// </summary>
internal static class InventedFleet
{
    public const string Home = "Quillmoor";
    public const string Away = "Sandvale";
    public const string Trainer = "trainer-4";
    public static readonly DateTimeOffset AsOf = new(2026, 11, 22, 5, 30, 0, TimeSpan.Zero);
    public static readonly ReportPeriod Week = new(new DateOnly(2026, 11, 16), new DateOnly(2026, 11, 22));
    public const string FlangeWeld = "exhaust/cyl-3/flange-weld";

    public static TrendSnapshot Snapshot() => new()
    {
        AsOf = AsOf,
        Parameters = new TrendParameters(),
        CodeVersion = "0.1.0+test",
        Fleet = [.. Enumerable.Range(1, 12).Select(Line)],
        Rates = Rates(),
        Recurrences = [Recurrence()],
        Repeats = [Repeat()],
        RecurrenceContrasts = [Contrast()],
        PartLives = PartLives(),
        Levels = [.. Enumerable.Range(1, 12).OrderBy(i => i != 7).Select(i => Level(i, Condition.Crack)), Level(7, Condition.LeakTrace)],
        Flags = [DriftFlag(), RepeatFlag(), BaseFlag()],
        DataProblems = [
            new(DataProblemKind.HoursBackwards, Tail(4), new DateOnly(2026, 11, 18), "Meter read 1,204.0 h after 1,240.0 h.", [new RecordKey("shop-cards", "r-881", 1)]),
            new(DataProblemKind.ActionNotRecorded, Tail(9), new DateOnly(2026, 10, 2), "Crack found 12 Sep, seen good 2 Oct.", [new RecordKey("shop-cards", "f-120", 2)]),
        ],
    };

    public static string Tail(int i) => $"ZZ-A{i:00}";

    public static FleetLine Line(int i) => new()
    {
        Registration = Tail(i),
        Base = i % 2 == 1 ? Home : Away,
        TypeGroup = Trainer,
        LatestHours = 1000 + (137.3 * i),
        LatestDate = new DateOnly(2026, 11, 21),
        HoursSinceInspection = 8.4 * i,
        LatestInspectionDate = new DateOnly(2026, 11, 21).AddDays(-3 * i),
        RecentEvents = i % 4,
        Events = [new(Condition.Crack, i == 7 ? 9 : i % 3)],
        OpenEvents = i % 3,
    };

    public static Level Level(int i, Condition condition) => new()
    {
        TypeGroup = Trainer,
        Registration = Tail(i),
        Base = i % 2 == 1 ? Home : Away,
        Condition = condition,
        Found = i == 7 ? 9 : i % 3,
        Expected = 1.2 + (0.1 * i),
        Ratio = (i == 7 ? Ratio(3.12, 1.58, 5.24, 9, 0) : Ratio(0.8 + (0.01 * i), 0.3, 1.9, i % 3, 0)) with { ExposureHours = null },
        ChanceAboveOneAndAHalf = i == 7 && condition == Condition.Crack ? 0.97 : 0.1,
        Variation = 0.4,
    };

    public static RepeatLocation Repeat() => new()
    {
        Registration = Tail(7),
        Base = Home,
        TypeGroup = Trainer,
        Location = FlangeWeld,
        Kind = "flange-weld",
        Condition = Condition.Crack,
        Events =
        [
            new(new DateOnly(2025, 9, 3), 1512.4, null, ActionKind.StopDrilled)
            {
                ClosedDate = new DateOnly(2025, 9, 3),
                Actions = [new(ActionKind.StopDrilled, new DateOnly(2025, 9, 3), 1512.4)],
                Counting = EventCounting.Counted,
            },
            new(new DateOnly(2026, 1, 20), 1634.0, 121.6, ActionKind.WeldRepaired)
            {
                SinceAction = ActionKind.StopDrilled,
                ClosedDate = new DateOnly(2026, 3, 3),
                Actions = [new(ActionKind.Monitored, new DateOnly(2026, 1, 20), 1634), new(ActionKind.WeldRepaired, new DateOnly(2026, 3, 3), 1869.9)],
                Counting = EventCounting.Counted,
            },
            new(new DateOnly(2026, 11, 19), 1958.2, 88.3, null) { SinceAction = ActionKind.WeldRepaired, Actions = [], Counting = EventCounting.Counted },
        ],
        ExposureHours = 520.1,
        Others = new RepeatOthers(11, 4, 12190),
        Evidence = [new("shop-cards", "f-101", 1), new("shop-cards", "f-140", 1), new("shop-cards", "f-177", 1)],
    };

    /// <summary>Watched from 1,400 h to 2,040 h; the others from 300 h to 2,400 h and from 3,000 h to 3,600 h.</summary>
    public static RecurrenceContrast Contrast() => new()
    {
        Registration = Tail(7),
        TypeGroup = Trainer,
        Location = FlangeWeld,
        Condition = Condition.Crack,
        FoundHours = [1512.4, 1634, 1958.2],
        Watched = [new(1400, 2040.2)],
        OthersCount = 11,
        OthersEvents = 4,
        Others = [.. new[] { 905.0, 1120, 1250, 1700 }.Select((h, i) =>
            new MeanCumulativePoint(h, 11 - i, 1, 0.09 * (i + 1), 0.05, Math.Max(0, (0.09 * (i + 1)) - 0.07 - (0.03 * i)), (0.09 * (i + 1))
                + 0.1 + (0.05 * i)))],
        OthersWatched = [new(300, 2400), new(3000, 3600)],
        Method = "mean cumulative function (Nelson 1995), robust limits",
    };

    public static ProposedFlag RepeatFlag() => new()
    {
        Subject = $"repeat-location/{Tail(7)}/{FlangeWeld}/Crack",
        Kind = FlagKind.RepeatLocation,
        Registration = Tail(7),
        Base = Home,
        TypeGroup = Trainer,
        Condition = Condition.Crack,
        Locations = [FlangeWeld],
        Ratio = Ratio(14.3, 2.9, 41.8, 3, 640.2),
        Observed = 3,
        Expected = 0.21,
        Expectation = Expected(0.21, 0.06, 0.54, 4, 12190),
        PValue = PValue.Exact(0.00002),
        QValue = 0.0123,
        Test = "events at this place against the same place on the other 11 aircraft of trainer-4",
        Family = "all 612 tests of an aircraft, a place and a condition",
        SinceDate = new DateOnly(2025, 9, 3),
        Statement = "It keeps cracking there.",
        WhatToCheck = [$"{FlangeWeld}: Cracks in the weld and in the metal beside it.", "Hangers and supports on either side."],
    };

    public static ProposedFlag DriftFlag() => new()
    {
        Subject = $"airframe-drift/{Tail(7)}/Crack",
        Kind = FlagKind.AirframeDrift,
        Registration = Tail(7),
        Base = Home,
        TypeGroup = Trainer,
        Condition = Condition.Crack,
        Locations = [FlangeWeld, "exhaust/left/y-weld"],
        Ratio = Ratio(4.74, 2.05, 9.9, 9, 9700),
        Observed = 9,
        Expected = 1.9,
        Expectation = Expected(1.9, 1.04, 3.19, 14, 98000),
        Test = "events of this aircraft against the other 11 aircraft of trainer-4, location by location",
        Family = "all 24 comparisons of an aircraft and a condition with its like",
        PValue = PValue.Exact(0.00021),
        QValue = 0.0031,
        SinceDate = new DateOnly(2025, 3, 4),
        Statement = "More cracks than its like.",
        WhatToCheck = [$"{FlangeWeld}: Cracks in the weld and in the metal beside it.", "Slip joints nearby must slide."],
    };

    public static Change Worse() => new()
    {
        TypeGroup = Trainer,
        Registration = Tail(7),
        Base = Home,
        Condition = Condition.Crack,
        Tier = FlagTier.Flag,
        CalledDate = new DateOnly(2026, 5, 2),
        LogScore = 4.1,
        SinceDate = new DateOnly(2025, 11, 4),
        SinceEarliestDate = new DateOnly(2025, 10, 1),
        SinceLatestDate = new DateOnly(2025, 12, 1),
        Part = "",
        PartShare = 0.7,
        Locations = [new(FlangeWeld, "flange-weld", 2), new("exhaust/cyl-1/flange-weld", "flange-weld", 1)],
        Ratio = 8,
        FoundBefore = 1,
        ExpectedBefore = 1.4,
        FoundSince = 3,
        ExpectedSince = 0.21,
        RatioSince = Ratio(14.3, 2.9, 41.8, 3, 640.2),
        OthersCount = 11,
        FalseCallsPer50AircraftYears = 1,
        AircraftYearsPerFalseCall = 420,
        IsAircraftYearsCapped = false,
        Dispersion = 1.1,
        Variation = 0.35,
    };

    public static ProposedFlag BaseFlag() => new()
    {
        Subject = $"base-part-life/{Trainer}/{Away}/gasket",
        Kind = FlagKind.BasePartLife,
        Base = Away,
        TypeGroup = Trainer,
        PartKind = "gasket",
        PartKindTitle = "Exhaust gasket",
        Locations = [],
        Ratio = AwayContrast().MedianRatio,
        Contrast = AwayContrast(),
        Observed = 21,
        PValue = PValue.Approximate(0.002),
        QValue = 0.011,
        Statement = "Half of the gaskets fail by 395 h, against 742 h elsewhere.",
        WhatToCheck = ["Torque practice: the engine maker's value, evenly and in steps.", "Calibration of the torque wrenches."],
    };

    public static FlagLine Raised(ProposedFlag flag, FlagLineState state = FlagLineState.New) => new()
    {
        Flag = flag,
        State = state,
        RaisedDate = new DateOnly(2026, 11, 20),
        AcknowledgedBy = state == FlagLineState.Acknowledged ? "lead mechanic" : null,
        AcknowledgedDate = state == FlagLineState.Acknowledged ? new DateOnly(2026, 11, 21) : null,
    };

    public static ReportInputs Inputs(ReportScope scope, params FlagLine[] flags) => new()
    {
        Scope = scope,
        Period = Week,
        Flags = flags,
        PagesUrl = new Uri("http://fleet.example:8080/"),
        Notice = "Synthetic demo data: an invented fleet.",
    };

    public static ReportInputs AllFlags(ReportScope scope) => Inputs(scope, Raised(DriftFlag()), Raised(RepeatFlag()), Raised(BaseFlag(), FlagLineState.Open));

    /// <summary>The same fleet a week earlier: two cracks fewer on one tail, one problem fewer.</summary>
    public static TrendSnapshot WeekBefore()
    {
        var now = Snapshot();
        return now with
        {
            AsOf = AsOf.AddDays(-7),
            Fleet = [.. now.Fleet.Select(l => l.Registration == Tail(7) ? l with { Events = [new(Condition.Crack, 7)] } : l)],
            DataProblems = [now.DataProblems[1]],
        };
    }

    private static RateTrend[] Rates() =>
    [
        new()
        {
            TypeGroup = Trainer, Kind = "flange-weld", KindTitle = "Weld of flange to stack", Condition = Condition.Crack, Rate = Rate(14, 48210, 0.29, 0.159, 0.487),
            AircraftCount = 12, PresentAtEntryCount = 2, RepeatCount = 3,
        },
        new()
        {
            TypeGroup = Trainer, Kind = "muffler-shell", KindTitle = "Muffler shell", Condition = Condition.Crack, Rate = Rate(0, 12050, null, null, 0.306),
            AircraftCount = 12, PresentAtEntryCount = 0, RepeatCount = 0,
        },
    ];

    private static RecurrenceTrend Recurrence() => new()
    {
        TypeGroup = Trainer,
        Location = FlangeWeld,
        Kind = "flange-weld",
        Condition = Condition.Crack,
        AircraftCount = 12,
        Events = 7,
        Points = [.. new[] { 905.0, 1120, 1250, 1512.4, 1634, 1700, 1958.2 }.Select((h, i) =>
            new MeanCumulativePoint(h, 12 - i, 1, 0.09 * (i + 1), 0.05, Math.Max(0, (0.09 * (i + 1)) - 0.07 - (0.03 * i)), (0.09 * (i + 1))
                + 0.1 + (0.05 * i)))],
        Method = "mean cumulative function (Nelson 1995), robust limits",
    };

    public static BaseContrast AwayContrast() => new()
    {
        MedianRatio = OfLives(0.53, 0.34, 0.79, "", 21, 60),
        MedianHere = OfLives(395, 316, 513, "h", 21, 60),
        MedianElsewhere = OfLives(742, 594, 965, "h", 14, 60),
        EarlyHours = 100,
        EarlyHere = OfLives(0.038, 0.01, 0.09, "", 21, 60),
        EarlyElsewhere = OfLives(0.016, 0.002, 0.06, "", 14, 60),
        EarlyRatio = OfLives(2.4, 0.4, 19, "", 21, 60),
        Law = "Weibull",
        OtherLives = 60,
        OtherFailures = 14,
        MedianTest = new ContrastTest(0.002, 0.011, ContrastFinding.Worse),
    };

    private static PartLifeTrend[] PartLives() =>
    [
        Gaskets(Home, 14, 60, 1.9, 900, null),
        Gaskets(Away, 21, 60, 2.1, 470, AwayContrast()),
        Gaskets(null, 35, 120, 1.7, 660, null) with
        {
            BasesDiffer = true, Fits = [], Law = null, Curve = [], CurveMethod = "no curve: the bases differ", EarlyFailures = null,
            NotEnoughData = "the bases differ",
        },
        Gaskets(null, 1, 30, 1, 1, null) with { Kind = "coupling", KindTitle = "Rubber coupling of an induction tube", Fits = [], Curve = [], NotEnoughData = "not enough data: 1 failure" },
    ];

    private static PartLifeTrend Gaskets(string? at, int failures, int lives, double shape, double scale, BaseContrast? contrast) => new()
    {
        TypeGroup = Trainer,
        Kind = "gasket",
        KindTitle = "Exhaust gasket",
        Base = at,
        Lives = lives,
        Failures = failures,
        LateEntries = 8,
        AgeUnknown = 5,
        OtherExcluded = 14,
        FailedBeforeEntry = 3,
        NeverExamined = 11,
        FailedInNoHours = 0,
        FollowedFromHours = 0,
        FollowedToHours = 640,
        FailureRate = Rate(failures, lives * 300.0, failures / (lives * 0.3), 0.2, 3.1),
        Curve = [.. Enumerable.Range(1, 6).Select(k =>
        {
            var share = 1 - Math.Exp(-Math.Pow(k * 100 / scale, shape));
            var before = 1 - Math.Exp(-Math.Pow((k - 1) * 100 / scale, shape));
            return new LifeStep((k * 100) - 60, k * 100, share - before, share);
        })],
        CurveMethod = "Turnbull 1976",
        Fits = [Fit("Weibull", shape, scale, failures, lives), Fit("lognormal", shape, scale, failures, lives)],
        Contrast = contrast,
        Law = "Weibull",
        EarlyFailures = OfLives(0.03, 0.005, 0.08, "", failures, lives),
    };

    public static LifeDistributionFit Fit(string name, double shape, double scale, int failures, int lives)
    {
        var median = scale * Math.Pow(Math.Log(2), 1 / shape);
        var b10 = scale * Math.Pow(-Math.Log(0.9), 1 / shape);
        var chance = 1 - Math.Exp(-Math.Pow(100 / scale, shape));
        return new LifeDistributionFit
        {
            Distribution = name,
            First = OfLives(shape, shape * 0.7, shape * 1.4, "", failures, lives),
            FirstName = "shape",
            Second = OfLives(scale, scale * 0.8, scale * 1.3, "h", failures, lives),
            SecondName = "scale",
            LogLikelihood = -100,
            Aic = 204,
            B10 = OfLives(b10, b10 * 0.7, b10 * 1.3, "h", failures, lives),
            Median = OfLives(median, median * 0.8, median * 1.3, "h", failures, lives),
            FailureWithinLookAhead = OfLives(chance, chance * 0.5, chance * 1.8, "", failures, lives),
        };
    }
}
