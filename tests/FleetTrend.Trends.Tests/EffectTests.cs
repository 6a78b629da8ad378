using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Records.Practices;
using FleetTrend.Records.Sources;
using FleetTrend.Statistics.Effects;
using FleetTrend.Trends.Effects;
using FleetTrend.Trends.Restarts;

namespace FleetTrend.Trends.Tests;

/// <summary>Whether what was done helped. Aircraft fly an hour a day; the as-of day is hour 731.</summary>
public sealed class EffectTests
{
    private const string Weld = "exhaust/cyl-1/flange-weld";
    private const string Gasket = "exhaust/cyl-1/gasket";
    private static readonly DateOnly Action = FleetBuilder.Start.AddDays(400);

    [Fact]
    public void A_tail_that_went_back_to_its_level_was_helped()
    {
        var effect = Assert.Single(OfTail([]));
        Assert.Equal(EffectVerdict.Helped, effect.Verdict);
        Assert.Equal(("ZZ-A00", Condition.Crack, Action), (effect.Registration!, effect.Condition!.Value, effect.ActionDate));
        Assert.Equal(0, effect.FoundAfter);
        Assert.StartsWith("It helped. Before: ", effect.Statement, StringComparison.Ordinal);
        Assert.Matches(@"\. Since over before: [0-9.]+ times \(90 % interval [0-9.]+ to [0-9.]+; [0-9]+ events?\)\.$", effect.Statement);
    }

    [Fact]
    public void A_tail_that_stayed_high_is_no_better()
    {
        var effect = Assert.Single(OfTail([430, 460, 500, 540, 580, 620, 660, 700]));
        Assert.Equal(EffectVerdict.NoBetter, effect.Verdict);
        Assert.Equal(8, effect.FoundAfter);
    }

    [Fact]
    public void Expected_is_what_the_others_have_at_the_same_time()
    {
        var effect = Assert.Single(OfTail([]));
        Assert.Equal(20, effect.OthersFoundAfter);
        // 20 of them in 20 x 320 h: one in 320 h. Their rate before, and how it moved, come to it within what is taken for known beforehand.
        Assert.InRange(effect.ExpectedAfter, 0.85, 1.5);
    }

    [Fact]
    public void Soon_after_it_is_too_early_to_tell()
    {
        var effect = Assert.Single(OfTail([], FleetBuilder.Start.AddDays(690)));
        Assert.Equal(EffectVerdict.TooEarly, effect.Verdict);
        Assert.StartsWith("Too early to tell.", effect.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void A_closing_without_an_action_has_no_effect() =>
        Assert.Empty(Find(Fleet([]), [new FlagClosing(FlagSubjects.Drift("ZZ-A00", Condition.Crack), FleetBuilder.AsOf)], []));

    // At north the gaskets failed at 120 h and are since the change good for 300; elsewhere they last as long.
    [Fact]
    public void A_practice_change_after_which_parts_last_helped()
    {
        var effect = Assert.Single(OfPractice(after: null), e => e.Kind == "gasket");
        Assert.Equal(EffectVerdict.Helped, effect.Verdict);
        Assert.Equal((Action, "north"), (effect.ActionDate, effect.Base));
        Assert.True(effect.AfterOverBefore.Upper < 1);
    }

    [Fact]
    public void A_practice_change_after_which_parts_fail_as_before_is_no_better()
    {
        var effect = Assert.Single(OfPractice(after: 120), e => e.Kind == "gasket");
        Assert.Equal(EffectVerdict.NoBetter, effect.Verdict);
    }

    [Fact]
    public void A_planned_practice_change_has_no_effect_yet() => Assert.Empty(OfPractice(after: null, FleetBuilder.Start.AddDays(2_000)));

    [Theory]
    [InlineData("airframe-drift/ZZ-A01/Crack", "ZZ-A01", null, null)]
    [InlineData("repeat-location/ZZ-A01/exhaust/cyl-3/flange-weld/Crack", "ZZ-A01", "exhaust/cyl-3/flange-weld", null)]
    [InlineData("base-part-life/four/north/gasket", null, null, "gasket")]
    public void A_subject_is_read_back(string subject, string? registration, string? location, string? kind)
    {
        var read = FlagSubjects.Read(subject)!;
        Assert.Equal((registration, location, kind), (read.Registration, read.Location, read.Kind));
        Assert.Null(FlagSubjects.Read("something/else"));
    }

    private static List<Effect> OfTail(int[] foundAfter, DateOnly? action = null) => Find(
        Fleet(foundAfter),
        [new FlagClosing(FlagSubjects.Drift("ZZ-A00", Condition.Crack), FleetBuilder.AsOf) { ActionDate = action ?? Action }], []);

    private static List<FleetBuilder> Fleet(int[] foundAfter)
    {
        var tail = new FleetBuilder("ZZ-A00").Watched(Weld, "flange-weld", 0, 720, looks: 25);
        foreach (var hours in (int[])[220, 250, 280, 310, 340, 370, 390, .. foundAfter])
            tail.Found(Weld, "flange-weld", hours);
        return [tail, .. Enumerable.Range(1, 20).Select(i => new FleetBuilder($"ZZ-A{i:00}", i % 2 == 0 ? "north" : "south")
            .Watched(Weld, "flange-weld", 0, 720, looks: 25)
            .Found(Weld, "flange-weld", 100 + i).Found(Weld, "flange-weld", 350 + i).Found(Weld, "flange-weld", 600 + i))];
    }

    private static List<Effect> OfPractice(int? after, DateOnly? day = null)
    {
        var fleet = Enumerable.Range(0, 32).Select(i =>
        {
            var isNorth = i < 16;
            var tail = new FleetBuilder($"ZZ-A{i:00}", isNorth ? "north" : "south");
            if (!isNorth)
                return tail.Life(Gasket, "gasket", 250, 300).Life(Gasket, "gasket", 280, i % 2 == 0 ? 320 : null, startDay: 300);
            for (var start = 0; start < 390; start += 130)
                tail.Life(Gasket, "gasket", 80, 120 + i % 3, startDay: start);
            if (after is not { } bad)
                return tail.Life(Gasket, "gasket", 300, startDay: 405);
            return tail.Life(Gasket, "gasket", 80, bad, startDay: 405).Life(Gasket, "gasket", 80, bad + 1, startDay: 545);
        });
        var change = new PracticeChange { ChangeDate = day ?? Action, Base = "north", Locations = [Gasket], What = "New torque wrench" };
        return Find([.. fleet], [], [new ObservedPracticeChange(new RecordKey("test", "practice-1", 1), change)]);
    }

    private static List<Effect> Find(List<FleetBuilder> fleet, IReadOnlyList<FlagClosing> closings, IReadOnlyList<ObservedPracticeChange> changes) =>
    [
        .. Analyses.Effects.Compute(new TypeGroupInputs("four", fleet.Select(b => b.Build()), FleetBuilder.AsOf, new TrendParameters())
        {
            FlagClosings = closings,
            PracticeChanges = changes,
        }).Subjects.Cast<SubjectResult<Effect>>().SelectMany(s => s.Items),
    ];
}
