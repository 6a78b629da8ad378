using System.Net;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Parameters;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.People;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>The page of the parameters: what is in force, how it changed, and the form that changes it.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ParametersPageTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Path = "/parameters";
    private const string Form = "form[action='/parameters']";

    private ApiServer server = null!;
    private Browser director = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        director = await Browser.SignedInAsync(server, "director <i>", PersonRole.Director);
    }

    public async Task DisposeAsync()
    {
        director.Dispose();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task The_shipped_defaults_stand_there_with_what_each_means_and_the_form_begins_with_them()
    {
        Assert.NotNull((await director.PageAsync("/")).QuerySelector("header a[href='/parameters']"));
        var page = await director.PageAsync(Path);
        Assert.Equal("In forcethe shipped defaults", page.QuerySelector(".status")!.TextContent.Trim());
        var rows = page.QuerySelectorAll("main table tbody tr");
        Assert.Equal(ParameterNumbers.All.Select(n => (n.Title, n.Meaning)), rows.Select(r => (r.Children[0].TextContent, r.Children[3].TextContent)));
        Assert.Equal(["0.95", "0.05", "1", "5", "3", "100 h", "0.95", "30", "90", "180", "5", "0.05"], rows.Select(r => r.Children[1].TextContent));
        Assert.All(rows, r => Assert.Equal(r.Children[1].TextContent, r.Children[2].TextContent));
        Assert.Equal("0.95", Value(page, "parameters.confidence"));
        Assert.Equal("0", Value(page, "revision"));
        Assert.Contains("None yet.", page.QuerySelector("main")!.TextContent);
    }

    [Fact]
    public async Task A_change_is_recorded_and_shown_with_who_and_why_and_the_API_says_the_same()
    {
        var typed = Shipped();
        (typed["parameters.confidence"], typed["parameters.look_interval_hours"], typed["note"]) = ("0.9", "50.5", "less <sure>,\r\nmore often");
        // The first row stays empty.
        (typed["parameters.look_intervals[1].kind"], typed["parameters.look_intervals[1].hours"]) = ("gasket", "25");
        using (var taken = await director.SendAsync(Path, Form, typed))
            Assert.Equal((HttpStatusCode.Redirect, "/parameters?done=change"), (taken.StatusCode, taken.Headers.Location!.OriginalString));
        var stored = (await server.Parameters.GetParametersAsync(new GetParametersRequest())).Parameters;
        Assert.Equal((1, 0.9, 50.5, "less <sure>,\nmore often"), (stored.Revision, stored.Parameters.Confidence, stored.Parameters.LookIntervalHours, stored.Note));
        Assert.Equal(new LookInterval { Kind = "gasket", Hours = 25 }, Assert.Single(stored.Parameters.LookIntervals));

        var page = await director.PageAsync("/parameters?done=change");
        Assert.Contains("Recorded: revision 1 is in force.", page.QuerySelector("[role=status]")!.TextContent);
        Assert.Contains("\u201cdirector <i>\u201d", page.QuerySelector(".status")!.TextContent);
        var change = page.QuerySelector("#history + div tbody tr")!;
        Assert.Equal("1", change.Children[0].TextContent);
        Assert.Equal(
            "Confidence of intervals: 0.95 to 0.9. Look interval: 100 to 50.5 h. Look interval of gasket on all type groups: 25 h of its own.",
            string.Join(' ', change.Children[1].TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        Assert.Contains("less <sure>", change.Children[2].TextContent);
        Assert.Equal(("1", "gasket", "25"), (Value(page, "revision"), Chosen(page, "parameters.look_intervals[0].kind"), Value(page, "parameters.look_intervals[0].hours")));

        // To take one away, empty its row.
        typed = Shipped();
        (typed["revision"], typed["note"]) = ("1", "as shipped again");
        (typed["parameters.look_intervals[0].kind"], typed["parameters.look_intervals[0].hours"]) = ("", "");
        using (var back = await director.SendAsync(Path, Form, typed))
            Assert.Equal(HttpStatusCode.Redirect, back.StatusCode);
        page = await director.PageAsync(Path);
        Assert.Contains("Look interval of gasket on all type groups: no longer its own", page.QuerySelector("#history + div tbody tr")!.TextContent);
        Assert.Equal(["2", "1"], page.QuerySelectorAll("#history + div tbody th").Select(c => c.TextContent));
    }

    [Fact]
    public async Task A_makers_limit_is_recorded_shown_and_taken_away_again()
    {
        var typed = Shipped();
        (typed["parameters.maker_limits[0].kind"], typed["parameters.maker_limits[0].renewal_hours"], typed["note"]) = ("gasket", "900", "the maker's manual");
        using (var taken = await director.SendAsync(Path, Form, typed))
            Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        var stored = (await server.Parameters.GetParametersAsync(new GetParametersRequest())).Parameters;
        Assert.Equal(new MakerLimit { Kind = "gasket", RenewalHours = 900 }, Assert.Single(stored.Parameters.MakerLimits));
        var page = await director.PageAsync(Path);
        Assert.Contains("Maker's limit of gasket on all type groups: renewal at 900 h", page.QuerySelector("#history + div tbody tr")!.TextContent);
        Assert.Equal(("gasket", "900", ""), (Chosen(page, "parameters.maker_limits[0].kind"), Value(page, "parameters.maker_limits[0].renewal_hours"),
            Value(page, "parameters.maker_limits[0].look_hours")));
        typed = Shipped();
        typed["revision"] = "1";
        using (var back = await director.SendAsync(Path, Form, typed))
            Assert.Equal(HttpStatusCode.Redirect, back.StatusCode);
        page = await director.PageAsync(Path);
        Assert.Contains("Maker's limit of gasket on all type groups: no longer told", page.QuerySelector("#history + div tbody tr")!.TextContent);
    }

    [Fact]
    public async Task A_broken_rule_stands_beside_its_field_and_what_was_typed_stays()
    {
        var typed = Shipped();
        (typed["parameters.confidence"], typed["parameters.minimum_failures_for_fit"], typed["note"]) = ("95 %", "2.5", "<kept>");
        (typed["parameters.look_intervals[1].kind"], typed["parameters.look_intervals[1].hours"]) = ("gasket", "often");
        using (var unread = await director.SendAsync(Path, Form, typed))
        {
            Assert.Equal(HttpStatusCode.BadRequest, unread.StatusCode);
            var page = await Browser.ReadAsync(unread);
            Assert.Contains("must be a number from 0.5 to 0.999 with at most 3 decimals; got \"95 %\"", page.GetElementById("change-parameters-confidence-error")!.TextContent);
            Assert.Contains("must be a whole number from 3 to 100; got \"2.5\"", page.GetElementById("change-parameters-minimum_failures_for_fit-error")!.TextContent);
            Assert.Contains("got \"often\"", page.GetElementById("change-parameters-look_intervals[0]-hours-error")!.TextContent);
            Assert.Equal(
                ("95 %", "often", "gasket", "<kept>"),
                (Value(page, "parameters.confidence"), Value(page, "parameters.look_intervals[0].hours"), Chosen(page, "parameters.look_intervals[0].kind"), page.QuerySelector("#change-note")!.TextContent));
        }

        typed = Shipped();
        (typed["parameters.maker_limits[1].kind"], typed["parameters.maker_limits[1].look_hours"]) = ("gasket", "never");
        using (var limit = await director.SendAsync(Path, Form, typed))
        {
            var page = await Browser.ReadAsync(limit);
            Assert.Contains("got \"never\"", page.GetElementById("change-parameters-maker_limits[0]-look_hours-error")!.TextContent);
            Assert.Equal(("gasket", "never"), (Chosen(page, "parameters.maker_limits[0].kind"), Value(page, "parameters.maker_limits[0].look_hours")));
        }

        typed = Shipped();
        (typed["parameters.confidence"], typed["note"]) = ("1", "");
        using (var refused = await director.SendAsync(Path, Form, typed))
        {
            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
            var page = await Browser.ReadAsync(refused);
            Assert.Contains("got 1", page.GetElementById("change-parameters-confidence-error")!.TextContent);
            Assert.Contains("must say why; got nothing", page.QuerySelector("#change-note-error")!.TextContent);
        }

        Assert.Equal(0, await server.CountAsync("parameter_revisions"));
    }

    [Fact] // Two people have the form open; the second is told, keeps what he typed, and can send it again.
    public async Task A_change_of_what_somebody_else_has_changed_meanwhile_is_refused_and_can_be_sent_again()
    {
        var mine = Shipped();
        (mine["parameters.confidence"], mine["note"]) = ("0.8", "mine");
        var theirs = Shipped();
        (theirs["parameters.minimum_failures_for_fit"], theirs["note"]) = ("4", "theirs");
        using (var first = await director.SendAsync(Path, Form, theirs))
            Assert.Equal(HttpStatusCode.Redirect, first.StatusCode);
        using (var late = await director.SendAsync(Path, Form, mine))
        {
            Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
            var page = await Browser.ReadAsync(late);
            Assert.Contains("must be the revision that is in force, 1; got 0", page.QuerySelector("[role=alert]")!.TextContent);
            Assert.Equal(("1", "0.8", "mine"), (Value(page, "revision"), Value(page, "parameters.confidence"), page.QuerySelector("#change-note")!.TextContent));
            Assert.NotNull(page.QuerySelector(page.QuerySelector("[role=alert] a")!.GetAttribute("href")!));
        }

        (mine["revision"], mine["parameters.minimum_failures_for_fit"]) = ("1", "4");
        using var again = await director.SendAsync(Path, Form, mine);
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        Assert.Equal(2, await server.CountAsync("parameter_revisions"));
    }

    /// <summary>The form as it comes where nothing was changed yet.</summary>
    private static Dictionary<string, string> Shipped() => new(StringComparer.Ordinal)
    {
        ["revision"] = "0",
        ["note"] = "tried out",
        ["parameters.confidence"] = "0.95",
        ["parameters.false_discovery_rate"] = "0.05",
        ["parameters.flags_per_50_aircraft_years"] = "1",
        ["parameters.watches_per_50_aircraft_years"] = "5",
        ["parameters.minimum_failures_for_fit"] = "3",
        ["parameters.look_interval_hours"] = "100",
        ["parameters.spare_service_level"] = "0.95",
        ["parameters.spare_first_horizon_days"] = "30",
        ["parameters.spare_second_horizon_days"] = "90",
        ["parameters.spare_third_horizon_days"] = "180",
        ["parameters.failure_cost_ratio"] = "5",
        ["parameters.undetected_failure_chance"] = "0.05",
        ["parameters.look_intervals[0].type_group"] = "",
        ["parameters.look_intervals[0].kind"] = "",
        ["parameters.look_intervals[0].hours"] = "",
        ["parameters.look_intervals[1].type_group"] = "",
        ["parameters.look_intervals[1].kind"] = "",
        ["parameters.look_intervals[1].hours"] = "",
        ["parameters.maker_limits[0].type_group"] = "",
        ["parameters.maker_limits[0].kind"] = "",
        ["parameters.maker_limits[0].renewal_hours"] = "",
        ["parameters.maker_limits[0].look_hours"] = "",
        ["parameters.maker_limits[1].type_group"] = "",
        ["parameters.maker_limits[1].kind"] = "",
        ["parameters.maker_limits[1].renewal_hours"] = "",
        ["parameters.maker_limits[1].look_hours"] = "",
    };

    private static string? Value(AngleSharp.Dom.IDocument page, string name) => page.QuerySelector($"{Form} [name='{name}']")!.GetAttribute("value");

    private static string? Chosen(AngleSharp.Dom.IDocument page, string name) =>
        page.QuerySelector($"{Form} [name='{name}'] option[selected]")?.GetAttribute("value");
}
