using FleetTrend.Cli.Serve;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Synthetic;
using Spectre.Console;

namespace FleetTrend.Cli.Demo;

/// <summary>What was planted, what was found, and where to look.</summary>
internal static class DemoSummary
{
    /// <summary>Prints it. True where every planted trouble was found.</summary>
    public static bool Print(
        SyntheticFleet fleet, IReadOnlyList<Flag> flags, IReadOnlyList<Report> reports, BothHosts hosts, DemoKeys keys, MailSettings mail)
    {
        AnsiConsole.WriteLine();
        AnsiConsole.MarkupLineInterpolated($"[bold]{fleet.School}[/]");
        var table = new Table().AddColumns("Planted", "Found").Border(TableBorder.Rounded);
        table.ShowRowSeparators();
        var explained = new HashSet<Flag>();
        var allFound = true;
        foreach (var planted in fleet.Planted)
        {
            var finders = flags.Where(planted.IsFoundBy).ToList();
            explained.UnionWith(finders);
            allFound &= finders.Count > 0;
            table.AddRow(
                new Markup(Markup.Escape(planted.Description)),
                finders.Count > 0
                    ? new Markup($"[green]{Markup.Escape(string.Join("\n", finders.Select(f => f.Statement)))}[/]")
                    : new Markup("[red]no flag[/]"));
        }

        AnsiConsole.Write(table);
        PrintOthers([.. flags.Where(f => !explained.Contains(f))]);
        PrintPlaces(reports, hosts, keys, mail);
        return allFound;
    }

    private static void PrintOthers(IReadOnlyList<Flag> others)
    {
        if (others.Count == 0)
        {
            AnsiConsole.MarkupLine("Flags beside these: none.");
            return;
        }

        AnsiConsole.MarkupLineInterpolated($"Flags beside these, which nobody planted: {others.Count}");
        foreach (var flag in others)
        {
            AnsiConsole.MarkupLineInterpolated($"  {flag.Statement}");
        }
    }

    private static void PrintPlaces(IReadOnlyList<Report> reports, BothHosts hosts, DemoKeys keys, MailSettings mail)
    {
        var grid = new Grid().AddColumns(2);
        grid.AddRow("Page", Markup.Escape(hosts.PagesUrl));
        foreach (var report in reports)
        {
            grid.AddRow("Report", Markup.Escape($"{report.Subject}"));
        }

        foreach (var file in DemoResults.MailFiles(mail))
        {
            grid.AddRow("Mail", Markup.Escape(Path.GetFullPath(file)));
        }

        if (mail.Smtp is { } smtp)
        {
            grid.AddRow("Mail", Markup.Escape($"sent to {smtp}"));
        }

        grid.AddRow("API", Markup.Escape($"gRPC {hosts.GrpcUrl} (reflection on); curl -H 'authorization: Bearer KEY' {hosts.PagesUrl}/v1/flags"));
        grid.AddRow("KEY", Markup.Escape(keys.ReadingKey));
        grid.AddRow("To answer", Markup.Escape($"sign in at {hosts.PagesUrl}/sign-in with {keys.DirectorKey}"));
        AnsiConsole.Write(grid);
        AnsiConsole.MarkupLine("Statistics support a decision; they never return an aircraft to service.");
    }
}
