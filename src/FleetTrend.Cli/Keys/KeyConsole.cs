using System.Text.RegularExpressions;
using FleetTrend.Cli.Analysis;
using FleetTrend.Records.Texts;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using Spectre.Console;

namespace FleetTrend.Cli.Keys;

/// <summary>Keys at the command line: a table for people, JSON for programs.</summary>
internal sealed partial class KeyConsole(KeyStore keys, SourceStore sources, TextWriter output, TextWriter error)
{
    private const int PageSize = 500;
    private const int MostNameCharacters = 60;
    private const int TableWidth = 140;

    private static readonly Dictionary<string, KeyScope> ScopesByName = new(StringComparer.OrdinalIgnoreCase)
    {
        ["records-write"] = KeyScope.RecordsWrite,
        ["trends-read"] = KeyScope.TrendsRead,
        ["administer"] = KeyScope.Administer,
        ["answer"] = KeyScope.Answer,
    };

    /// <summary>Makes a key and shows it.</summary>
    public async Task<int> CreateAsync(string name, string? source, IReadOnlyList<string> scopeNames, bool json, CancellationToken ct)
    {
        if (Problem(name, source, scopeNames) is { } problem)
            return Refuse(problem);
        var registers = source is not null && !(await sources.ReadNamesAsync(ct)).Contains(source);
        if (registers)
            await sources.AddAsync(source!, source!, ct);
        var made = await keys.AddAsync(name, source, [.. scopeNames.Select(scope => ScopesByName[scope])], ct)
            ?? throw new InvalidOperationException($"The source {source} is gone; sources never go.");
        if (json)
        {
            output.WriteLine(JsonOutput.Write(new { key = Fields(made.Key), keyText = made.Text, registeredSource = registers ? source : null }));
            return ExitCode.Done;
        }

        Print([made.Key]);
        if (registers)
            output.WriteLine($"Registered the source {source}, which was not there before. If it is a typing error, revoke this key: fleettrend keys revoke {made.Key.Id}");
        output.WriteLine("The key, which is shown this once:");
        output.WriteLine(made.Text);
        return ExitCode.Done;
    }

    /// <summary>Lists all keys.</summary>
    public async Task<int> ListAsync(bool json, CancellationToken ct)
    {
        var all = new List<ApiKey>();
        for (string? token = null; ;)
        {
            var page = await keys.ListAsync(PageSize, token, ct);
            all.AddRange(page.Items);
            token = page.NextPageToken;
            if (token is null)
                break;
        }

        if (json)
            output.WriteLine(JsonOutput.Write(new { keys = all.Select(Fields) }));
        else if (all.Count == 0)
            output.WriteLine("There are no keys. 'fleettrend keys create' makes one.");
        else
            Print(all);
        return ExitCode.Done;
    }

    /// <summary>Revokes a key.</summary>
    public async Task<int> RevokeAsync(string id, bool json, CancellationToken ct)
    {
        if (await keys.RevokeAsync(id, write: true, ct) is not { } key)
            return Refuse($"key '{(KeyText.TryParse(id, out var text) ? text.Id : id)}': must be the identifier of a key, as 'fleettrend keys list' shows it");
        if (json)
            output.WriteLine(JsonOutput.Write(new { key = Fields(key) }));
        else
            Print([key]);
        return ExitCode.Done;
    }

    private static string? Problem(string name, string? source, IReadOnlyList<string> scopeNames) =>
        name.Length is 0 or > MostNameCharacters || name.EnumerateRunes().Any(ForeignText.IsHidden) || name != name.Trim()
            ? $"name '{name}': must be 1 to 60 printable characters without a space at either end"
        : scopeNames.Count == 0 ? "--scope: must be given, at least once: records-write, trends-read, answer or administer"
        : scopeNames.FirstOrDefault(scope => !ScopesByName.ContainsKey(scope)) is { } unknown
            ? $"--scope, value '{unknown}': must be records-write, trends-read, answer or administer"
        : source is null && scopeNames.Any(scope => ScopesByName[scope] == KeyScope.RecordsWrite)
            ? "--source: must be given with --scope records-write: a key pushes records of one source"
        : source is not null && !SourceName().IsMatch(source) ? $"--source, value '{source}': must be 2 to 40 of a-z, 0-9 and '-'"
        : null;

    private static object Fields(ApiKey key) => new
    {
        keyId = key.Id,
        name = key.Name,
        source = key.Source,
        scopes = key.Scopes.Select(NameOf),
        createTime = key.CreateTime,
        lastUsedTime = key.LastUsedTime,
        revokeTime = key.RevokeTime,
    };

    private static string NameOf(KeyScope scope) => ScopesByName.Single(pair => pair.Value == scope).Key;

    private static string Shown(DateTimeOffset? time) => time is { } t ? $"{t.UtcDateTime:yyyy-MM-dd HH:mm}" : "";

    private int Refuse(string problem)
    {
        error.WriteLine(problem);
        return ExitCode.BadInput;
    }

    private void Print(IReadOnlyList<ApiKey> all)
    {
        var table = new Table().AddColumns("id", "name", "source", "scopes", "made (UTC)", "last used (UTC)", "revoked (UTC)").Border(TableBorder.Rounded);
        foreach (var key in all)
        {
            table.AddRow(
                key.Id, Markup.Escape(key.Name), key.Source ?? "", string.Join('\n', key.Scopes.Select(NameOf)),
                Shown(key.CreateTime), Shown(key.LastUsedTime), Shown(key.RevokeTime));
        }

        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(output) });
        console.Profile.Width = Math.Max(console.Profile.Width, TableWidth);
        console.Write(table);
    }

    [GeneratedRegex(@"\A[a-z0-9-]{2,40}\z", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex SourceName();
}
