using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FleetTrend.IntegrationTests.Chromium;

/// <summary>One window of Debian's Chromium, and what went wrong in it.</summary>
internal sealed class BrowserWindow : IAsyncDisposable
{
    private static readonly string[] Serious = ["serious", "critical"];

    private readonly IBrowserContext context;
    private readonly Uri server;
    private readonly List<string> errors = [];

    private BrowserWindow(IBrowserContext context, IPage page, Uri server)
    {
        (this.context, Page, this.server) = (context, page, server);
        page.Console += (_, message) =>
        {
            if (message.Type == "error") errors.Add(message.Text);
        };
        page.PageError += (_, message) => errors.Add(message);
    }

    /// <summary>How Debian's Chromium is started.</summary>
    public static BrowserTypeLaunchOptions Options => new()
    {
        ExecutablePath = Environment.GetEnvironmentVariable("FLEETTREND_TEST_CHROMIUM") ?? "/usr/bin/chromium",
        Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
    };

    public IPage Page { get; }

    /// <summary>Opens a window that is so wide, in the light or the dark scheme.</summary>
    public static async Task<BrowserWindow> OpenAsync(IBrowser browser, Uri server, int width, bool isDark = false)
    {
        var fresh = await browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = 900 },
            ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
            BypassCSP = true, // for axe, which runs in the page
        });
        return new BrowserWindow(fresh, await fresh.NewPageAsync(), server);
    }

    public Task GoAsync(string path) => Page.GotoAsync(new Uri(server, path).AbsoluteUri);

    public Task<string> HeadingAsync() => Page.Locator("h1").First.InnerTextAsync();

    /// <summary>What is wrong with the page that is open, in a line each; none where all is well.</summary>
    public async Task<IReadOnlyList<string>> ListFaultsAsync()
    {
        List<string> faults = [.. errors.Select(e => $"console: {e}")];
        errors.Clear();
        if ((await Page.TitleAsync()).StartsWith(" -", StringComparison.Ordinal))
            faults.Add("no title");
        if (await Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth") > 0)
            faults.Add("scrolls sideways");
        faults.AddRange((await Page.RunAxe()).Violations.Where(v => Serious.Contains(v.Impact, StringComparer.Ordinal))
            .Select(v => $"axe: {v.Id}, {v.Nodes.Length} times, first at {v.Nodes[0].Target}"));
        return faults;
    }

    public async ValueTask DisposeAsync() => await context.CloseAsync();
}
