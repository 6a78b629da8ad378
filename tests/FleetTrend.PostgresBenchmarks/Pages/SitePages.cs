using System.Net;
using System.Text.RegularExpressions;

namespace FleetTrend.PostgresBenchmarks.Pages;

/// <summary>Finds the pages that the product has, by following its links from the first.</summary>
internal static partial class SitePages
{
    private const int PathsPerKind = 3;

    public static async Task<IReadOnlyList<PageKind>> FindAsync(HttpClient http)
    {
        var kinds = new SortedDictionary<string, List<string>>(StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal) { "/" };
        for (var next = new Queue<string>(seen); next.TryDequeue(out var path);)
        {
            var kind = KindOf(path);
            if (kinds.TryGetValue(kind, out var paths) && paths.Count == PathsPerKind)
                continue;
            using var answer = await http.GetAsync(new Uri(path, UriKind.Relative));
            if (answer.Content.Headers.ContentType?.MediaType != "text/html")
                continue;
            if (answer.StatusCode != HttpStatusCode.OK)
                throw new InvalidOperationException($"{path} answers {(int)answer.StatusCode}.");
            if (paths is null)
                kinds.Add(kind, paths = []);
            paths.Add(path);
            foreach (Match link in Links().Matches(await answer.Content.ReadAsStringAsync()))
            {
                var target = WebUtility.HtmlDecode(link.Groups["path"].Value);
                if (seen.Add(target))
                    next.Enqueue(target);
            }
        }

        return [.. kinds.Select(k => new PageKind(k.Key, k.Value))];
    }

    private static string KindOf(string link)
    {
        var (path, query) = link.Split('?', 2) is [var before, var after] ? (before, after) : (link, "");
        var parts = path.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var names = query.Split('&', StringSplitOptions.RemoveEmptyEntries).Select(q => q.Split('=')[0]);
        var kind = "/" + string.Join('/', parts.Take(1).Concat(parts.Skip(1).Select(_ => "*")));
        return query.Length == 0 ? kind : $"{kind}?{string.Join('&', names.Order(StringComparer.Ordinal))}";
    }

    [GeneratedRegex(
        """<a\b[^>]*\bhref="(?<path>/[^"#]*)""", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Links();
}
