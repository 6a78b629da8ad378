using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Flags;
using FleetTrend.Trends.Restarts;
using Microsoft.Extensions.DependencyInjection;
using Cracked = FleetTrend.Records.Findings.Condition;
using Standing = FleetTrend.Records.Flags.FlagState;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>A flag about which something was done gets its verdict from what came after, at a refresh.</summary>
[Collection(SharedPostgres.Name)]
public sealed class FlagEffectTests(PostgresFixture postgres)
{
    private const double ActionHours = 725;
    private const double FlownHours = 1_425;

    [Fact]
    public async Task Back_at_the_norm_helped_still_high_is_no_better_and_little_flown_stays_acted_on()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("welded", "flange-weld", "ZZ", hoursPerDay: 5);
        var (back, high, late) = (fleet.Unit(), fleet.Unit(), fleet.Unit());
        for (var hours = 25.0; hours <= FlownHours; hours += 50)
        {
            Look(fleet, back, hours, isCracked: hours is > 300 and <= ActionHours);
            Look(fleet, high, hours, isCracked: hours > 300);
            Look(fleet, late, hours, isCracked: hours is > 950);
        }

        for (var i = 0; i < 12; i++)
        {
            var other = fleet.Unit();
            for (var hours = 25.0; hours <= FlownHours; hours += 50)
                Look(fleet, other, hours, isCracked: hours % 700 == 25 + i * 50);
        }

        await fleet.PushAsync(server);
        var flags = server.Services.GetRequiredService<FlagStore>();
        var ids = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var (mark, action) in new[] { (back, ActionHours), (high, ActionHours), (late, FlownHours) })
        {
            var raised = Assert.Single(await flags.RaiseAsync(DateTimeOffset.UtcNow, [Proposal(mark)], default));
            await flags.AnswerAsync(
                raised.FlagId, new FlagAnswer { State = Standing.ActedOn, By = "lead", ActionDate = UnitFleet.DayOf(action, 5) }, write: true, default);
            ids[mark] = raised.FlagId;
        }

        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        async Task<Standing> StateAsync(string mark) => (await flags.GetAsync(ids[mark], default))!.State;
        Assert.Equal((Standing.Helped, Standing.NoBetter, Standing.ActedOn), (await StateAsync(back), await StateAsync(high), await StateAsync(late)));
        var step = (await flags.ListStepsAsync(ids[back], 10, null, default)).Items[^1];
        Assert.Null(step.By);
        Assert.StartsWith("It helped. Before: ", step.Note, StringComparison.Ordinal);

        var effects = (await server.Trends.ListEffectsAsync(new ListEffectsRequest())).Effects;
        Assert.Equal(
            [(back, EffectVerdict.Helped), (high, EffectVerdict.NoBetter), (late, EffectVerdict.TooEarly)],
            effects.OrderBy(e => e.Registration, StringComparer.Ordinal).Select(e => (e.Registration, e.Verdict)));
        var helped = Assert.Single((await server.Trends.ListEffectsAsync(new ListEffectsRequest { Registration = back })).Effects);
        Assert.Equal((step.Note, "welded", Condition.Crack), (helped.Statement, helped.TypeGroup, helped.Condition));
        Assert.Equal((0.9, true), (helped.AfterOverBefore.Confidence, helped.Odds > 6));
        var page = await server.Http.GetStringAsync("/effects");
        Assert.Contains($"{back}, acted on ", page, StringComparison.Ordinal);
        Assert.Contains("Too early to tell", page, StringComparison.Ordinal);
    }

    private static void Look(UnitFleet fleet, string mark, double hours, bool isCracked)
    {
        fleet.Looked(mark, hours);
        if (!isCracked)
            return;
        fleet.Found(mark, hours, Condition.Crack);
        fleet.Done(mark, hours, ActionKind.WeldRepaired);
    }

    private static FlagProposal Proposal(string mark) => new()
    {
        Subject = FlagSubjects.Drift(mark, Cracked.Crack),
        Kind = "AirframeDrift",
        Registration = mark,
        Base = "test stand",
        TypeGroup = "welded",
        EventCount = 9,
        BodyJson = "{}",
    };
}
