using System.Net;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Reports.Tests;
using FleetTrend.Store.Keys;
using FleetTrend.Store.People;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>Every form of the pages against every role, a key, and nobody: who may send it, and what becomes of it where he may not.</summary>
[Collection(SharedPostgres.Name)]
public sealed class RoleTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Tablet = "tablet";
    private static readonly Dictionary<string, string> Nothing = [];

    private ApiServer server = null!;
    private long flag;
    private string check = "";
    private string merge = "";
    private long person;

    /// <summary>Every form by its address, and who may send it: D a director and an administrator, A an administrator alone.</summary>
    private (string Form, char Needed)[] Forms =>
    [
        ($"/flags/{flag}?handler=Acknowledge", 'D'), ($"/flags/{flag}?handler=Act", 'D'), ($"/flags/{flag}?handler=Close", 'D'),
        ($"/flags/{flag}?handler=Assign", 'D'), ($"/flags/{flag}?handler=Reopen", 'D'), ($"/data-problems/{check}?handler=Close", 'D'),
        ($"/data-problems/{check}?handler=Merge", 'D'), ($"/merges/{merge}?handler=Unmerge", 'D'),
        ("/codes/set?source=shop-cards&kind=location&code=EX-1", 'D'), ("/parameters", 'D'),
        ("/people", 'A'), ($"/people/{person}?handler=Role", 'A'), ($"/people/{person}?handler=Renew", 'A'),
        ($"/people/{person}?handler=Disable", 'A'), ($"/people/{person}?handler=Enable", 'A'),
    ];

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        var snapshot = InventedFleet.Snapshot();
        await server.Services.PublishAsync(snapshot);
        flag = (await server.Services.RaiseAsync(snapshot))[0].FlagId;
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { ShopCards.Aircraft("ZZ-A01"), ShopCards.Finding("card") } });
        var twin = ShopCards.Finding("twin", day: 12);
        twin.Key.Source = Tablet;
        await (await server.IntakeOfAsync(Tablet)).PushRecordAsync(new PushRecordRequest { Record = twin });
        await server.Services.RefreshAsync();
        check = (await server.Checks.ListDataChecksAsync(new ListDataChecksRequest { Kind = DataCheckKind.PossibleDuplicate })).Checks.Single().CheckId;
        merge = (await server.Checks.MergeFindingsAsync(new MergeFindingsRequest
        {
            Kept = new FindingName { Source = ShopCards.Source, SourceRecordId = "card" },
            Merged = new FindingName { Source = Tablet, SourceRecordId = "twin" },
            DecidedBy = "lead",
            Note = "one",
        })).Merge.MergeId;
        person = (await server.AddPersonAsync("somebody", PersonRole.Reader)).Id;
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Theory]
    [InlineData(PersonRole.Reader, "")]
    [InlineData(PersonRole.Director, "D")]
    [InlineData(PersonRole.Administrator, "DA")]
    public async Task A_form_is_taken_from_the_roles_that_may_send_it_and_refused_to_the_others(PersonRole role, string opens)
    {
        using var browser = await Browser.SignedInAsync(server, "one of them", role);
        var mark = await browser.MarkAsync("/password");
        var before = await StateAsync();
        foreach (var (form, needed) in Forms.Where(f => !opens.Contains(f.Needed, StringComparison.Ordinal)))
        {
            using var refused = await browser.PostAsync(form, Nothing, mark);
            Assert.Equal((form, HttpStatusCode.Forbidden), (form, refused.StatusCode));
            var said = (await Browser.ReadAsync(refused)).QuerySelector("[role=alert]")!.TextContent;
            Assert.Contains(needed == 'A' ? "takes an administrator" : "takes a director or an administrator", said, StringComparison.Ordinal);
            Assert.Contains("one of them is signed in as a", said, StringComparison.Ordinal);
            using var shown = await browser.GetAsync(form.Split("?handler")[0]);
            var page = await Browser.ReadAsync(shown);
            Assert.True(form.StartsWith("/data-problems", StringComparison.Ordinal) || page.QuerySelector(".why-not") is not null, form); // that one is settled
            Assert.Empty(page.QuerySelectorAll("form"));
        }

        Assert.Equal(before, await StateAsync());
        foreach (var (form, _) in Forms.Where(f => opens.Contains(f.Needed, StringComparison.Ordinal)))
        {
            using var unmarked = await browser.PostAsync(form, Nothing, null); // a form of another site
            Assert.Equal((form, HttpStatusCode.BadRequest), (form, unmarked.StatusCode));
            Assert.Contains("Form not taken", await unmarked.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(before, await StateAsync());
        foreach (var (form, _) in Forms.Where(f => opens.Contains(f.Needed, StringComparison.Ordinal)))
        {
            using var taken = await browser.PostAsync(form, Nothing, mark); // let in, whatever its fields are refused with
            Assert.NotEqual((form, HttpStatusCode.Forbidden), (form, taken.StatusCode));
            Assert.DoesNotContain("/sign-in", taken.Headers.Location?.OriginalString ?? "", StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Nobody_and_a_key_of_every_scope_are_led_to_signing_in()
    {
        using var nobody = server.HttpWith(null);
        using var program = server.HttpWith(await server.CreateKeyAsync(ShopCards.Source, Enum.GetValues<KeyScope>()));
        foreach (var http in new[] { nobody, program })
        {
            foreach (var path in Forms.Select(f => f.Form).Concat(["/", "/flags", "/password", "/reports/1"]))
            {
                using var shown = await http.GetAsync(path);
                Assert.Equal((path, HttpStatusCode.Redirect), (path, shown.StatusCode));
                using var content = new FormUrlEncodedContent(Nothing);
                using var sent = await http.PostAsync(path, content);
                Assert.Equal((path, HttpStatusCode.Redirect), (path, sent.StatusCode));
                Assert.StartsWith("/sign-in", sent.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task A_director_answers_without_a_right_that_makes_keys_or_people()
    {
        using var director = await Browser.SignedInAsync(server, "director", PersonRole.Director);
        using (var codes = await director.GetAsync("/v1/codes?source=shop-cards"))
            Assert.Equal(HttpStatusCode.OK, codes.StatusCode);
        foreach (var path in new[] { "/v1/keys", "/v1/sources", "/v1/mails" })
        {
            using var refused = await director.GetAsync(path);
            Assert.Equal((path, HttpStatusCode.Forbidden), (path, refused.StatusCode));
        }

        using var own = await director.GetAsync("/v1/keys:own");
        Assert.Equal(HttpStatusCode.Unauthorized, own.StatusCode);
    }

    private async Task<string> StateAsync() => string.Join(' ', await Task.WhenAll(new[]
    {
        "flag_steps", "finding_merges", "source_codes", "parameter_revisions", "people", "people where role = 1 and disable_time is null",
        "data_checks where close_time is not null",
    }.Select(async table => $"{await server.CountAsync(table)}")));
}
