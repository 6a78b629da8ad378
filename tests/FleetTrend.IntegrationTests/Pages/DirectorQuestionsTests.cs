using System.Globalization;
using AngleSharp.Html.Parser;
using FleetTrend.Results.Refreshes;
using FleetTrend.Synthetic;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>
/// The questions of a maintenance director, asked of the pages of the demo's fleet. What is planted in it is said by <see cref="SyntheticSchool"/>; the answers
/// must name it.
/// </summary>
[Collection(SharedPostgres.Name)]
public sealed class DirectorQuestionsTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Each_question_has_its_answer_on_a_page()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = await DemoFleet.PushAsync(server);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);
        var bad = fleet.Planted[0].Registration;
        Assert.NotEmpty(bad);

        // Which tail is going bad faster than its sisters, and where on it?
        var flags = await TextAsync(server, "/flags");
        Assert.Matches($"{bad} Has had [0-9.]+ times the cracks of similar aircraft since about", flags);
        Assert.Contains($"{bad} along its flight hours", await TextAsync(server, $"/aircraft/{bad}"), StringComparison.Ordinal);

        // Which location cracks again and again, and does the repair hold?
        Assert.Matches("[0-9]+ cracks, most at [a-z0-9 ]+ \\([0-9]+\\)\\.", await TextAsync(server, "/locations?type-group=synthetic-trainer-four"));
        await AddsUpAsync(server, "/locations/synthetic-trainer-four/exhaust/muffler/shell");
        var repairs = await TextAsync(server, "/repairs");
        Assert.Matches("Of [0-9]+ weld repairs? at .* cracked again within 200 h", repairs);

        // How long does an exhaust gasket last here, and what is the chance that it fails before the next look?
        Assert.Matches($"{fleet.Bases[1]} [0-9,]+ h ?95 % interval [0-9,]+ to [0-9,]+", await TextAsync(server, "/parts/synthetic-trainer-four/gasket"));
        Assert.Matches("ZZ-[AB][0-9]{2}", await TextAsync(server, "/chances"));

        // A leak that is left erodes the port face: how long do we have?
        Assert.Matches("Of [0-9]+ leaks? at exhaust ports on [0-9]+ aircraft", await TextAsync(server, "/leaks"));

        // What should be on the shelf for the next 90 days?
        Assert.Matches("is short by [0-9]+ .* within [0-9]+ days: [0-9]+ on hand", await TextAsync(server, "/spares"));

        // Did last month's change do anything?
        Assert.Matches("Torque wrench calibrated.* Helped", await TextAsync(server, "/effects"));
    }

    /// <summary>The count of a location, the aircraft behind it and the rows that it links to say one number.</summary>
    private static async Task AddsUpAsync(ApiServer server, string path)
    {
        var page = new HtmlParser().ParseDocument(await server.Http.GetStringAsync(path));
        var cracks = page.QuerySelectorAll("section[aria-labelledby=ft-conditions] tbody tr").Single(r => r.Children[0].TextContent == "Cracks");
        var found = int.Parse(cracks.Children[1].TextContent, CultureInfo.InvariantCulture);
        Assert.InRange(found, 1, 100);
        var aircraft = page.QuerySelector("section[aria-labelledby=ft-of-1] table")!.QuerySelectorAll("tbody tr");
        Assert.Equal(found, aircraft.Sum(r => int.Parse(r.Children[1].TextContent, CultureInfo.InvariantCulture)));
        var rows = await server.Http.GetStringAsync(page.QuerySelector("a[href*='condition=CONDITION_CRACK']")!.GetAttribute("href"));
        Assert.Equal(found, rows.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Sum(l => int.Parse(l.Split(',')[1], CultureInfo.InvariantCulture)));
    }

    private static async Task<string> TextAsync(ApiServer server, string path) =>
        string.Join(' ', new HtmlParser().ParseDocument(await server.Http.GetStringAsync(path)).QuerySelector("main")!.TextContent
            .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
