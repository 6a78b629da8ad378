using AngleSharp.Html.Parser;
using FleetTrend.Store.People;

namespace FleetTrend.IntegrationTests;

/// <summary>Signs in as a director before the first page is asked for; calls go through as they are.</summary>
internal sealed class PageVisitor(ApiServer server, HttpMessageHandler inner) : DelegatingHandler(inner)
{
    private const string Mark = "__RequestVerificationToken";

    private readonly SemaphoreSlim signingIn = new(1, 1);
    private bool isSignedIn;

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var path = request.RequestUri!.AbsolutePath;
        if (!isSignedIn && !path.StartsWith("/v1/", StringComparison.Ordinal) && !path.StartsWith("/health", StringComparison.Ordinal))
            await SignInOnceAsync(cancellationToken);
        return await base.SendAsync(request, cancellationToken);
    }

    protected override void Dispose(bool disposing)
    {
        signingIn.Dispose();
        base.Dispose(disposing);
    }

    private async Task SignInOnceAsync(CancellationToken ct)
    {
        await signingIn.WaitAsync(ct);
        try
        {
            if (isSignedIn)
                return;
            const string name = "director of the tests";
            await server.AddPersonAsync(name, PersonRole.Director);
            var address = new Uri(server.HttpAddress, "/sign-in");
            using var asked = new HttpRequestMessage(HttpMethod.Get, address);
            using var form = await base.SendAsync(asked, ct);
            var page = await new HtmlParser().ParseDocumentAsync(await form.Content.ReadAsStringAsync(ct));
            using var sent = new HttpRequestMessage(HttpMethod.Post, address)
            {
                Content = new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal)
                {
                    ["name"] = name,
                    ["password"] = ApiServer.Password,
                    [Mark] = page.QuerySelector($"input[name={Mark}]")!.GetAttribute("value")!,
                }),
            };
            using var answer = await base.SendAsync(sent, ct);
            Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
            isSignedIn = true;
        }
        finally
        {
            signingIn.Release();
        }
    }
}
