using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Store.People;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>A browser without script: keeps cookies, signs in, fills in forms as a person would.</summary>
internal sealed class Browser(ApiServer server) : IDisposable
{
    private const string Mark = "__RequestVerificationToken";

    private readonly HttpClient http = server.HttpWith(null);

    /// <summary>A browser in which a new person has signed in.</summary>
    public static async Task<Browser> SignedInAsync(ApiServer server, string name, PersonRole role)
    {
        await server.AddPersonAsync(name, role);
        var browser = new Browser(server);
        using var answer = await browser.SignInAsync(name, ApiServer.Password);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }

    /// <summary>Signs in, or tries to.</summary>
    public Task<HttpResponseMessage> SignInAsync(string name, string password, string query = "") =>
        SendAsync("/sign-in" + query, "form:not([action])", new() { ["name"] = name, ["password"] = password });

    /// <summary>A page, as it is.</summary>
    public Task<HttpResponseMessage> GetAsync(string path) => http.GetAsync(path);

    /// <summary>A page that is there.</summary>
    public async Task<IDocument> PageAsync(string path)
    {
        using var answer = await http.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await ReadAsync(answer);
    }

    /// <summary>The cookie of a session, as somebody who copied it would send it.</summary>
    public static string CookieOf(HttpResponseMessage signedIn) =>
        signedIn.Headers.GetValues("Set-Cookie").Select(cookie => cookie.Split(';')[0]).Single(cookie => cookie.StartsWith("fleettrend=", StringComparison.Ordinal));

    /// <summary>What the first page answers to who sends such a cookie.</summary>
    public static async Task<HttpStatusCode> OpenAsync(ApiServer server, string cookie)
    {
        using var copier = new HttpClient(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = server.HttpAddress };
        using var request = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { { "Cookie", cookie } } };
        using var answer = await copier.SendAsync(request);
        return answer.StatusCode;
    }

    /// <summary>What an answer shows.</summary>
    public static async Task<IDocument> ReadAsync(HttpResponseMessage answer) =>
        await new HtmlParser().ParseDocumentAsync(await answer.Content.ReadAsStringAsync());

    /// <summary>Opens a page, fills in one of its forms, and sends it with what is hidden in it.</summary>
    /// <param name="path">The page.</param>
    /// <param name="form">Which form, as a selector.</param>
    /// <param name="typed">What goes into which field; every field must be there.</param>
    public async Task<HttpResponseMessage> SendAsync(string path, string form, Dictionary<string, string> typed)
    {
        var found = (await PageAsync(path)).QuerySelector(form) ?? throw new InvalidOperationException($"{path} has no {form}.");
        Assert.All(typed.Keys, name => Assert.NotNull(found.QuerySelector($"[name='{name}']")));
        var all = found.QuerySelectorAll("input[type=hidden]").Where(field => field.GetAttribute("name") != Mark)
            .ToDictionary(field => field.GetAttribute("name")!, field => field.GetAttribute("value")!, StringComparer.Ordinal);
        foreach (var (name, value) in typed)
            all[name] = value;
        return await PostAsync(found.GetAttribute("action") ?? path, all, found.QuerySelector($"input[name={Mark}]")!.GetAttribute("value"));
    }

    /// <summary>Sends a form that no page may have shown.</summary>
    /// <param name="address">Where to.</param>
    /// <param name="typed">The fields.</param>
    /// <param name="mark">The mark against forms of other sites; null for none.</param>
    public async Task<HttpResponseMessage> PostAsync(string address, Dictionary<string, string> typed, string? mark)
    {
        using var content = new FormUrlEncodedContent(mark is null ? typed : new Dictionary<string, string>(typed, StringComparer.Ordinal) { [Mark] = mark });
        return await http.PostAsync(address, content);
    }

    /// <summary>A mark of this browser: every form of a signed-in browser takes it.</summary>
    public async Task<string> MarkAsync(string path) =>
        (await PageAsync(path)).QuerySelector($"input[name={Mark}]")!.GetAttribute("value")!;

    public void Dispose() => http.Dispose();
}
