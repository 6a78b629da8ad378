using FleetTrend.Records.Flags;
using FleetTrend.Store;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Histories;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.DependencyInjection;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>A flag is raised once, stays one while it is not closed, and comes back only by what came after its closing.</summary>
[Collection(SharedPostgres.Name)]
public sealed class FlagStoreTests(PostgresFixture postgres)
{
    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 4, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task Two_workers_at_once_raise_a_flag_once()
    {
        await using var store = await CreateAsync(postgres);
        var workers = Enumerable.Range(0, 4).Select(_ => store.StartProcess().GetRequiredService<FlagStore>()).ToList();
        FlagProposal[] proposals = [Proposal("ZZ-A01", 3), Proposal("ZZ-A02", 4)];

        var raised = await Task.WhenAll(workers.Select((flags, i) => Task.Run(() => flags.RaiseAsync(Monday.AddMinutes(i), proposals, default))));

        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from flags"));
        Assert.Equal(2, raised.Sum(list => list.Count));
    }

    [Fact]
    public async Task A_repeated_refresh_answers_the_same_and_a_later_one_brings_fresh_evidence()
    {
        await using var store = await CreateAsync(postgres);
        var flags = store.StartProcess().GetRequiredService<FlagStore>();

        var first = await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default);
        var again = await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default);
        var later = await flags.RaiseAsync(Monday.AddDays(1), [Proposal("ZZ-A01", 5)], default);
        var late = await flags.RaiseAsync(Monday.AddHours(1), [Proposal("ZZ-A01", 4)], default);

        Assert.Equal(first, again);
        Assert.Empty(later);
        Assert.Empty(late);
        var flag = Assert.Single((await flags.ListAsync(null, null, 10, null, default)).Items);
        Assert.Equal(Proposal("ZZ-A01", 5), flag.Proposal);
        Assert.Equal((FlagState.Open, Monday, Monday.AddDays(1)), (flag.State, flag.RaiseTime, flag.LastSeenTime));
    }

    [Fact]
    public async Task An_acknowledged_flag_is_not_raised_again_and_a_closed_one_only_by_a_refresh_that_knew_of_the_closing()
    {
        await using var store = await CreateAsync(postgres);
        var flags = store.StartProcess().GetRequiredService<FlagStore>();
        var raised = Assert.Single(await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default));

        var acknowledged = await AnswerAsync(flags, raised.FlagId, FlagState.Acknowledged, "on the next 100-hour");
        var repeated = await AnswerAsync(flags, raised.FlagId, FlagState.Acknowledged, "on the next 100-hour");
        Assert.Equal(acknowledged, repeated);
        Assert.Equal(FlagState.Acknowledged, acknowledged!.State);
        Assert.Empty(await flags.RaiseAsync(Monday.AddDays(1), [Proposal("ZZ-A01", 4)], default));

        var closed = await AnswerAsync(flags, raised.FlagId, FlagState.Closed, "hanger moved");
        Assert.Equal((FlagState.Closed, "hanger moved"), (closed!.State, closed.Answer));
        Assert.Equal(closed, await AnswerAsync(flags, raised.FlagId, FlagState.Acknowledged, "too late"));
        // A refresh that was under way when it was closed has counted everything; a later one counts what came after, be it fewer.
        Assert.Empty(await flags.RaiseAsync(closed.AnswerTime!.Value.AddSeconds(-1), [Proposal("ZZ-A01", 5)], default));
        var anew = Assert.Single(await flags.RaiseAsync(closed.AnswerTime!.Value.AddDays(1), [Proposal("ZZ-A01", 3)], default));

        Assert.NotEqual(raised.FlagId, anew.FlagId);
        Assert.Equal(closed, await flags.GetAsync(raised.FlagId, default));
        Assert.Null(await AnswerAsync(flags, 999, FlagState.Closed, "nothing"));
    }

    [Fact]
    public async Task Flags_are_listed_newest_first_by_page_state_and_aircraft()
    {
        await using var store = await CreateAsync(postgres);
        var flags = store.StartProcess().GetRequiredService<FlagStore>();
        await flags.RaiseAsync(Monday, [.. Enumerable.Range(0, 5).Select(i => Proposal($"ZZ-A0{i}", 3))], default);
        var first = await flags.ListAsync(null, null, 3, null, default);
        var second = await flags.ListAsync(null, null, 3, first.NextPageToken, default);
        await AnswerAsync(flags, first.Items[0].FlagId, FlagState.Closed, "done");

        Assert.Equal(5, first.Items.Concat(second.Items).Select(flag => flag.FlagId).Distinct().Count());
        Assert.True(first.Items[0].FlagId > second.Items[^1].FlagId);
        Assert.Null(second.NextPageToken);
        Assert.Equal(4, (await flags.ListAsync(null, null, 10, null, default)).Items.Count);
        Assert.Single((await flags.ListAsync(FlagState.Closed, null, 10, null, default)).Items);
        Assert.Single((await flags.ListAsync(null, second.Items[0].Proposal.Registration, 10, null, default)).Items);
        await Assert.ThrowsAsync<FormatException>(() => flags.ListAsync(null, null, 10, "not a token!", default));
    }

    [Fact]
    public async Task Each_step_is_a_row_in_order_and_only_a_verdict_leads_on_from_an_action()
    {
        await using var store = await CreateAsync(postgres);
        var flags = store.StartProcess().GetRequiredService<FlagStore>();
        var id = Assert.Single(await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 2) with { Tier = FlagTier.Watch }], default)).FlagId;
        await AnswerAsync(flags, id, FlagState.Acknowledged, "seen as a watch");
        await flags.RaiseAsync(Monday.AddDays(1), [Proposal("ZZ-A01", 3) with { Tier = FlagTier.Watch }], default);
        await flags.RaiseAsync(Monday.AddDays(2), [Proposal("ZZ-A01", 4)], default);
        await flags.RaiseAsync(Monday.AddDays(2), [Proposal("ZZ-A01", 4)], default); // the same refresh again
        var acted = (await AnswerAsync(flags, id, FlagState.ActedOn, "hanger moved", new DateOnly(2026, 3, 6)))!;
        // One that did not know of the action has counted what it settled. Standing out again is no verdict.
        await flags.RaiseAsync(acted.StateTime.AddSeconds(-1), [Proposal("ZZ-A01", 5)], default);
        await flags.RaiseAsync(acted.StateTime.AddSeconds(1), [Proposal("ZZ-A01", 1) with { Tier = FlagTier.Watch }], default);
        Assert.Equal((FlagState.ActedOn, 1), ((await flags.GetAsync(id, default))!.State, (await flags.GetAsync(id, default))!.Proposal.EventCount));
        await flags.RaiseAsync(acted.StateTime.AddSeconds(2), [Proposal("ZZ-A01", 3)], default);
        Assert.Equal((FlagState.ActedOn, 3), ((await flags.GetAsync(id, default))!.State, (await flags.GetAsync(id, default))!.Proposal.EventCount));
        Assert.Single(await flags.JudgeAsync(acted.StateTime.AddSeconds(2), [new FlagVerdict(acted.Proposal.Subject, Helped: false, "3 in 200 h")], default));
        var again = (await AnswerAsync(flags, id, FlagState.ActedOn, "bracket renewed", new DateOnly(2026, 3, 9)))!;
        Assert.Empty(await flags.JudgeAsync(again.StateTime.AddSeconds(-1), [new FlagVerdict(again.Proposal.Subject, Helped: true, "")], default));
        var helped = Assert.Single(await flags.JudgeAsync(again.StateTime.AddSeconds(1), [new FlagVerdict(again.Proposal.Subject, Helped: true, "none in 400 h")], default));
        Assert.Empty(await flags.JudgeAsync(again.StateTime.AddSeconds(2), [new FlagVerdict(again.Proposal.Subject, Helped: false, "")], default));
        Assert.Equal((FlagState.Helped, 0), (helped.State, (await flags.ListAsync(null, null, 10, null, default)).Items.Count));
        await AnswerAsync(flags, id, FlagState.Reopened, "cracked on the ground run");
        await AnswerAsync(flags, id, FlagState.Closed, "a false alarm");

        var first = await flags.ListStepsAsync(id, 6, null, default);
        var second = await flags.ListStepsAsync(id, 6, first.NextPageToken, default);
        FlagState[] states =
        [
            FlagState.Watch, FlagState.Acknowledged, FlagState.Open, FlagState.ActedOn, FlagState.NoBetter, FlagState.ActedOn, FlagState.Helped,
            FlagState.Reopened, FlagState.Closed,
        ];
        Assert.Equal(states, first.Items.Concat(second.Items).Select(step => step.State));
        Assert.Equal(["lead mechanic", "lead mechanic", "lead mechanic", "lead mechanic", "lead mechanic"], first.Items.Concat(second.Items).Select(step => step.By).OfType<string>());
        Assert.Equal((null, "none in 400 h"), (second.Items[0].By, second.Items[0].Note));
        Assert.Equal(new DateOnly(2026, 3, 9), first.Items[5].ActionDate);
        Assert.Equal(states.Length, (await flags.GetAsync(id, default))!.Version);
    }

    // Expected values by hand: what is settled as of a moment is the newest action day, or the day of a closing that was not taken back by then.
    [Fact]
    public async Task What_is_settled_is_read_as_it_was_known_at_a_moment()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        var flags = process.GetRequiredService<FlagStore>();
        var knowledge = process.GetRequiredService<Knowledge>();
        async Task<DateOnly?> SettledAsync(DateTimeOffset asOf) =>
            (await process.GetRequiredService<HistoryReader>().ReadWithoutAircraftAsync(asOf, default)).FlagClosings.SingleOrDefault()?.CountedAfterDate;
        var id = Assert.Single(await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default)).FlagId;
        var raised = await knowledge.FixAsOfAsync(default);
        await AnswerAsync(flags, id, FlagState.ActedOn, "hanger moved", new DateOnly(2026, 3, 6));
        var acted = await knowledge.FixAsOfAsync(default);
        var closing = (await AnswerAsync(flags, id, FlagState.Closed, "done"))!;
        var closed = await knowledge.FixAsOfAsync(default);
        await AnswerAsync(flags, id, FlagState.Reopened, "by mistake");
        var reopened = await knowledge.FixAsOfAsync(default);

        Assert.Null(await SettledAsync(raised));
        Assert.Equal(new DateOnly(2026, 3, 6), await SettledAsync(acted));
        Assert.Equal(DateOnly.FromDateTime(closing.StateTime.UtcDateTime), await SettledAsync(closed));
        Assert.Equal(new DateOnly(2026, 3, 6), await SettledAsync(reopened));
        Assert.Equal(new DateOnly(2026, 3, 6), await SettledAsync(acted)); // a report made again sees what was known then
    }

    [Fact]
    public async Task Of_two_that_answer_one_version_at_once_one_wins_and_the_other_is_told()
    {
        await using var store = await CreateAsync(postgres);
        var processes = Enumerable.Range(0, 4).Select(_ => store.StartProcess().GetRequiredService<FlagStore>()).ToList();
        var id = Assert.Single(await processes[0].RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default)).FlagId;

        var answers = await Task.WhenAll(processes.Select((flags, i) => Task.Run(() => flags.AnswerAsync(
            id, new FlagAnswer { State = FlagState.Acknowledged, By = $"mechanic {i}", Note = "mine", Version = 1 }, write: true, default))));

        Assert.Equal(1, answers.Count(answer => answer!.State == AnswerState.Taken));
        Assert.Equal(3, answers.Count(answer => answer!.State == AnswerState.StepBetween));
        Assert.Equal(2, (await processes[0].ListStepsAsync(id, 10, null, default)).Items.Count);
    }

    [Fact]
    public async Task A_flag_that_was_raised_again_is_not_reopened()
    {
        await using var store = await CreateAsync(postgres);
        var flags = store.StartProcess().GetRequiredService<FlagStore>();
        var id = Assert.Single(await flags.RaiseAsync(Monday, [Proposal("ZZ-A01", 3)], default)).FlagId;
        var closed = (await AnswerAsync(flags, id, FlagState.Closed, "done"))!;
        Assert.Single(await flags.RaiseAsync(closed.StateTime.AddDays(1), [Proposal("ZZ-A01", 3)], default));

        var answer = await flags.AnswerAsync(id, new FlagAnswer { State = FlagState.Reopened, By = "lead", Note = "why" }, write: true, default);

        Assert.Equal((AnswerState.NewerIsOpen, FlagState.Closed), (answer!.State, answer.Flag.State));
    }

    [Fact]
    public async Task Flags_of_an_earlier_version_keep_what_was_answered_as_steps()
    {
        await using var store = await CreateAsync(postgres);
        var process = store.StartProcess();
        await using var context = await process.GetRequiredService<IDbContextFactory<FleetDbContext>>().CreateDbContextAsync();
        await context.GetService<IMigrator>().MigrateAsync("PracticeChanges");
        await context.Database.ExecuteSqlRawAsync(
            """
            insert into flags (subject, kind, state, base, type_group, event_count, body_json, raise_time, last_seen_time, answered_by, answer, answer_time)
            values ('a', 'AirframeDrift', 1, 'b', 'g', 1, '{{}}', '2026-03-02', '2026-03-02', null, null, null),
                   ('b', 'AirframeDrift', 2, 'b', 'g', 1, '{{}}', '2026-03-02', '2026-03-02', 'lead', 'seen', '2026-03-03'),
                   ('c', 'AirframeDrift', 3, 'b', 'g', 1, '{{}}', '2026-03-02', '2026-03-02', 'lead', 'done', '2026-03-04')
            """);

        await context.GetService<IMigrator>().MigrateAsync();

        var flags = process.GetRequiredService<FlagStore>();
        var lives = new List<string>();
        for (var id = 1; id <= 3; id++)
        {
            var flag = (await flags.GetAsync(id, default))!;
            var steps = (await flags.ListStepsAsync(id, 10, null, default)).Items;
            lives.Add($"{flag.State} {flag.Proposal.Tier} {flag.Version}: {string.Join(", ", steps.Select(step => $"{step.State} {step.StepTime:dd} {step.By} {step.Note}"))}");
        }

        Assert.Equal(["Open Flag 1: Open 02  ", "Acknowledged Flag 2: Open 02  , Acknowledged 03 lead seen", "Closed Flag 2: Open 02  , Closed 04 lead done"], lives);
        var closing = Assert.Single((await process.GetRequiredService<HistoryReader>().ReadWithoutAircraftAsync(DateTimeOffset.UtcNow, default)).FlagClosings);
        Assert.Equal(("c", new DateOnly(2026, 3, 4)), (closing.Subject, closing.CountedAfterDate));
    }

    private static async Task<StoredFlag?> AnswerAsync(
        FlagStore flags, long id, FlagState state, string note, DateOnly? day = null) => (await flags.AnswerAsync(
        id, new FlagAnswer { State = state, By = "lead mechanic", Note = note, ActionDate = day }, write: true, default))?.Flag;

    private static FlagProposal Proposal(string registration, int events) => new()
    {
        Subject = $"AirframeDrift {registration} Crack",
        Kind = "AirframeDrift",
        Registration = registration,
        Base = "Invented Field",
        TypeGroup = TypeGroup,
        EventCount = events,
        BodyJson = $$"""{ "observed" : {{events}} }""",
    };
}
