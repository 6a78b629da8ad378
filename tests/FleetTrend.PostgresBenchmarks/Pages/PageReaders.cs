using System.Diagnostics;
using System.Net;

namespace FleetTrend.PostgresBenchmarks.Pages;

/// <summary>People who read pages: each waits for a page, looks at it for a second, and asks for the next.</summary>
internal sealed class PageReaders(HttpClient http, int seed)
{
    public const int Count = 20;
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    /// <summary>All of them read pages of one kind for a while.</summary>
    /// <returns>Milliseconds until the last byte was there, of each page read, and the most bytes of one.</returns>
    public async Task<(IReadOnlyList<double> Milliseconds, long MostBytes)> ReadAsync(PageKind kind, TimeSpan duration)
    {
        var clock = Stopwatch.StartNew();
        var readers = Enumerable.Range(0, Count).Select(reader => ReadAsync(kind, reader, clock, duration));
        var pages = (await Task.WhenAll(readers)).SelectMany(read => read).ToList();
        return ([.. pages.Select(page => page.Milliseconds)], pages.Max(page => page.Bytes));
    }

    private async Task<List<(double Milliseconds, long Bytes)>> ReadAsync(
        PageKind kind, int reader, Stopwatch clock, TimeSpan duration)
    {
        var pages = new List<(double, long)>();
        await Task.Delay(Pause * new Random(seed + reader).NextDouble()); // they did not come at once
        do
        {
            var path = kind.Paths[(reader + pages.Count) % kind.Paths.Count];
            var start = Stopwatch.GetTimestamp();
            using var answer = await http.GetAsync(new Uri(path, UriKind.Relative));
            var bytes = await answer.Content.ReadAsByteArrayAsync();
            pages.Add((Stopwatch.GetElapsedTime(start).TotalMilliseconds, bytes.Length));
            if (answer.StatusCode != HttpStatusCode.OK)
                throw new InvalidOperationException($"{path} answers {(int)answer.StatusCode}.");
            await Task.Delay(Pause);
        }
        while (clock.Elapsed < duration);
        return pages;
    }
}
