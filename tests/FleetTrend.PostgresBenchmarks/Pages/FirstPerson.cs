using System.Net;
using System.Text.RegularExpressions;
using FleetTrend.Api.People;
using FleetTrend.Hosting.Configuration;

namespace FleetTrend.PostgresBenchmarks.Pages;

/// <summary>Signs in as whoever opens the first link: keys open no page.</summary>
internal static partial class FirstPerson
{
    private const string Password = "words of a benchmark";

    /// <summary>Becomes the administrator; the client keeps the cookie.</summary>
    public static async Task SignInAsync(HttpClient http, string dataFolder)
    {
        var link = new Uri((await File.ReadAllTextAsync(FirstSignIn.PathIn(new HostSettings { DataFolder = dataFolder }))).Trim());
        var form = await http.GetStringAsync(new Uri(link.PathAndQuery, UriKind.Relative));
        using var content = new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["token"] = link.Query["?token=".Length..],
            ["name"] = "benchmark",
            ["address"] = "benchmark@shop.example",
            ["password"] = Password,
            ["__RequestVerificationToken"] = Mark().Match(form).Groups["mark"].Value,
        });
        using var answer = await http.PostAsync(new Uri(FirstSignIn.Page, UriKind.Relative), content);
        if (answer.StatusCode != HttpStatusCode.Redirect)
            throw new InvalidOperationException($"The first link answers {(int)answer.StatusCode}.");
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]* value=\"(?<mark>[^\"]+)\"", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Mark();
}
