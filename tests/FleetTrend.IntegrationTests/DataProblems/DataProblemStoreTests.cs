using FleetTrend.Records.Sources;
using FleetTrend.Store.DataProblems;
using Microsoft.Extensions.DependencyInjection;
using static FleetTrend.IntegrationTests.Store.StoreFixture;

namespace FleetTrend.IntegrationTests.DataProblems;

/// <summary>A problem opens once, stays closed while what was looked at is the same, and ends by itself.</summary>
[Collection(SharedPostgres.Name)]
public sealed class DataProblemStoreTests(PostgresFixture postgres)
{
    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 4, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task Two_workers_and_repeated_refreshes_open_a_check_once()
    {
        await using var store = await CreateAsync(postgres);
        var workers = Enumerable.Range(0, 4).Select(_ => store.StartProcess().GetRequiredService<DataProblemStore>()).ToList();
        FoundDataProblem[] found = [Problem("ZZ-A01"), Problem("ZZ-A02"), Problem("ZZ-A02")];

        var opened = await Task.WhenAll(workers.Select(problems => Task.Run(() => problems.SaveAsync(Monday, found, default))));
        Assert.Equal(2, opened.Sum());
        Assert.Equal(2L, await store.ScalarAsync<long>("select count(*) from data_checks"));

        var before = await workers[0].ListPresentAsync(default);
        Assert.Equal(0, await workers[0].SaveAsync(Monday, found, default));
        Assert.Equivalent(before, await workers[1].ListPresentAsync(default), strict: true);
        Assert.Equivalent(found[..2], before.Select(problem => problem.Found), strict: true);
    }

    [Fact]
    public async Task What_is_not_found_any_more_is_gone_and_opens_anew_when_it_comes_back()
    {
        await using var store = await CreateAsync(postgres);
        var problems = store.StartProcess().GetRequiredService<DataProblemStore>();
        await problems.SaveAsync(Monday, [Problem("ZZ-A01")], default);
        await problems.SaveAsync(Monday.AddDays(1), [Problem("ZZ-A01") with { Description = "fresh words" }], default);
        var open = Assert.Single(await problems.ListPresentAsync(default));
        Assert.Equal(("fresh words", Monday, Monday.AddDays(1)), (open.Found.Description, open.SinceTime, open.LastSeenTime));

        await problems.SaveAsync(Monday.AddDays(2), [], default);
        Assert.Empty(await problems.ListPresentAsync(default));
        var gone = Assert.Single((await problems.ListAsync(new DataProblemFilter(DataProblemState.Gone), 10, null, default)).Items);
        Assert.Equal((Monday.AddDays(2), null), (gone.GoneTime, gone.ClosedBy));

        Assert.Equal(1, await problems.SaveAsync(Monday.AddDays(3), [Problem("ZZ-A01")], default));
        var again = Assert.Single(await problems.ListPresentAsync(default));
        Assert.Equal((DataProblemState.Open, Monday.AddDays(3)), (again.State, again.SinceTime));
        Assert.NotEqual(open.ProblemId, again.ProblemId);
    }

    [Fact]
    public async Task A_closed_check_stays_closed_until_other_evidence_comes()
    {
        await using var store = await CreateAsync(postgres);
        var problems = store.StartProcess().GetRequiredService<DataProblemStore>();
        await problems.SaveAsync(Monday, [Problem("ZZ-A01")], default);
        var id = (await problems.ListPresentAsync(default))[0].ProblemId;
        var closed = await problems.CloseAsync(id, "lead mechanic", "two aircraft, both real", write: true, default);
        Assert.Equal((DataProblemState.Closed, "lead mechanic"), (closed!.State, closed.ClosedBy));
        Assert.Equal(closed, await problems.CloseAsync(id, "somebody", "too late", write: true, default) is { } same ? same with { Found = closed.Found } : null);

        Assert.Equal(0, await problems.SaveAsync(Monday.AddDays(1), [Problem("ZZ-A01")], default)); // the same again
        await problems.SaveAsync(Monday.AddDays(2), [], default); // it ends
        Assert.Empty(await problems.ListPresentAsync(default));
        Assert.Equal(0, await problems.SaveAsync(Monday.AddDays(3), [Problem("ZZ-A01")], default)); // and comes back as it was
        Assert.Equal(DataProblemState.Closed, Assert.Single(await problems.ListPresentAsync(default)).State);

        Assert.Equal(1, await problems.SaveAsync(Monday.AddDays(4), [Problem("ZZ-A01", revision: 2)], default));
        var open = Assert.Single(await problems.ListPresentAsync(default));
        Assert.Equal((DataProblemState.Open, Monday.AddDays(4), 2), (open.State, open.SinceTime, open.Found.Evidence[0].Revision));
        var kept = Assert.Single((await problems.ListAsync(new DataProblemFilter(DataProblemState.Closed), 10, null, default)).Items);
        Assert.Equal((id, "two aircraft, both real", Monday.AddDays(4)), (kept.ProblemId, kept.CloseNote, kept.GoneTime));
        Assert.Null(await problems.CloseAsync(999, "nobody", "nothing", write: true, default));
    }

    [Fact]
    public async Task A_refresh_that_started_earlier_and_ends_later_changes_nothing()
    {
        await using var store = await CreateAsync(postgres);
        var problems = store.StartProcess().GetRequiredService<DataProblemStore>();
        await problems.SaveAsync(Monday.AddHours(1), [Problem("ZZ-A01")], default);
        Assert.Equal(0, await problems.SaveAsync(Monday, [Problem("ZZ-A02")], default));
        Assert.Equal("ZZ-A01", Assert.Single(await problems.ListPresentAsync(default)).Found.Registration);
    }

    [Fact]
    public async Task Checks_are_listed_newest_first_by_page_state_kind_and_either_aircraft()
    {
        await using var store = await CreateAsync(postgres);
        var problems = store.StartProcess().GetRequiredService<DataProblemStore>();
        FoundDataProblem[] found = [.. Enumerable.Range(0, 4).Select(i => Problem($"ZZ-A0{i}")), Problem("ZZ-A09") with { Kind = "Other", OtherRegistration = "ZZ-A00" }];
        await problems.SaveAsync(Monday, found, default);

        var first = await problems.ListAsync(new DataProblemFilter(), 3, null, default);
        var second = await problems.ListAsync(new DataProblemFilter(), 3, first.NextPageToken, default);
        Assert.Equal(5, first.Items.Concat(second.Items).Select(problem => problem.ProblemId).Distinct().Count());
        Assert.Null(second.NextPageToken);
        Assert.Single((await problems.ListAsync(new DataProblemFilter(Kind: "Other"), 9, null, default)).Items);
        Assert.Equal(2, (await problems.ListAsync(new DataProblemFilter(Registration: "ZZ-A00"), 9, null, default)).Items.Count);
        Assert.Empty((await problems.ListAsync(new DataProblemFilter(DataProblemState.Closed), 9, null, default)).Items);
        Assert.Equal(5, (await problems.CountAsync(default))[DataProblemState.Open]);
        await Assert.ThrowsAsync<FormatException>(() => problems.ListAsync(new DataProblemFilter(), 9, "not a token!", default));
    }

    private static FoundDataProblem Problem(string registration, int revision = 1) => new()
    {
        Identity = $"identity of {registration}",
        Fingerprint = $"fingerprint {revision}",
        Kind = "HoursBackwards",
        Registration = registration,
        ProblemDate = new DateOnly(2026, 2, 3),
        Rule = "Time in service never falls.",
        Description = "1,204.0 h after 1,240.0 h.",
        Evidence = [new RecordKey(Source, $"reading of {registration}", revision)],
    };
}
