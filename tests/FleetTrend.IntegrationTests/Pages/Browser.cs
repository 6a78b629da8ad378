using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>A browser without script: keeps cookies, signs in, fills in forms as a person would.</summary>
internal sealed class Browser(ApiServer server) : IDisposable
{
    private const string Mark = "__RequestVerificationToken";

    private readonly HttpClient http = server.HttpWith(null);

    /// <summary>A browser that has signed in with a key.</summary>
    public static async Task<Browser> SignedInAsync(ApiServer server, string key)
    {
        var browser = new Browser(server);
        using var answer = await browser.SendAsync("/sign-in", "form:not([action])", new() { ["key"] = key });
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }

    /// <summary>A page, as it is.</summary>
    public Task<HttpResponseMessage> GetAsync(string path) => http.GetAsync(path);

    /// <summary>A page that is there.</summary>
    public async Task<IDocument> PageAsync(string path)
    {
        using var answer = await http.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await ReadAsync(answer);
    }

    /// <summary>What an answer shows.</summary>
    public static async Task<IDocument> ReadAsync(HttpResponseMessage answer) =>
        await new HtmlParser().ParseDocumentAsync(await answer.Content.ReadAsStringAsync());

    /// <summary>Opens a page, fills in one of its forms, and sends it.</summary>
    /// <param name="path">The page.</param>
    /// <param name="form">Which form, as a selector.</param>
    /// <param name="typed">What goes into which field; every field must be there.</param>
    public async Task<HttpResponseMessage> SendAsync(string path, string form, Dictionary<string, string> typed)
    {
        var found = (await PageAsync(path)).QuerySelector(form) ?? throw new InvalidOperationException($"{path} has no {form}.");
        Assert.All(typed.Keys, name => Assert.NotNull(found.QuerySelector($"[name='{name}']")));
        return await PostAsync(found.GetAttribute("action") ?? path, typed, found.QuerySelector($"input[name={Mark}]")!.GetAttribute("value"));
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
