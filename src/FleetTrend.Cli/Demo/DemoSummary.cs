using System.Globalization;
using FleetTrend.Cli.Serve;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Synthetic;
using Spectre.Console;

namespace FleetTrend.Cli.Demo;

/// <summary>What was planted, what came of it and since when; what chance alone raised; and where to look.</summary>
internal sealed class DemoSummary(
    SyntheticFleet fleet, IReadOnlyList<Flag> flags, IReadOnlyList<Effect> effects, IReadOnlyList<Quietness> quiet)
{
    private const double RecordYears = 3;

    /// <summary>Prints it. True where everything planted was answered as it should be.</summary>
    public bool Print(IReadOnlyList<Report> reports, BothHosts hosts, DemoKeys keys, MailSettings mail)
    {
        AnsiConsole.WriteLine();
        AnsiConsole.MarkupLineInterpolated($"[bold]{fleet.School}[/]");
        var table = new Table().AddColumns("Planted", "Called", "Since").Border(TableBorder.Rounded);
        table.ShowRowSeparators();
        var explained = new HashSet<Flag>();
        var isAsPlanted = true;
        foreach (var planted in fleet.Planted)
        {
            var own = flags.Where(f => IsAbout(f, planted)).ToList();
            explained.UnionWith(own);
            var (isRight, called, since) = Answer(planted, own);
            isAsPlanted &= isRight;
            table.AddRow(
                new Markup(Markup.Escape($"{planted.Description}{(planted.SinceDate is { } day ? $" Since {Day(day)}." : "")}")),
                new Markup($"[{(isRight ? "green" : "red")}]{Markup.Escape(called)}[/]"),
                new Markup(Markup.Escape(since)));
        }

        AnsiConsole.Write(table);
        PrintOthers([.. flags.Where(f => !explained.Contains(f) && f.State != FlagState.Helped)]);
        PrintPlaces(reports, hosts, keys, mail);
        return isAsPlanted;
    }

    private static bool IsAbout(Flag flag, PlantedTrouble planted) => planted.Registration.Length > 0
        ? flag.Registration == planted.Registration
        : flag.Registration.Length == 0 && flag.Base == planted.Base && flag.TypeGroup == planted.TypeGroup && flag.PartKind == planted.PartKind;

    private (bool IsRight, string Called, string Since) Answer(PlantedTrouble planted, IReadOnlyList<Flag> own)
    {
        var strong = own.Where(f => f.Tier == FlagTier.Flag).ToList();
        var helped = own.Where(f => f.State == FlagState.Helped).ToList();
        var practice = effects.Where(e => e.PracticeChange is not null && e.Base == planted.Base && e.TypeGroup == planted.TypeGroup
            && e.PartKind == planted.PartKind && e.Verdict == EffectVerdict.Helped).ToList();
        var asked = quiet.Where(q => q.Registration == planted.Registration && q.Questions.Count > 0).ToList();
        return planted.Answer switch
        {
            PlantedAnswer.Flag => (strong.Count > 0, Told(strong.Select(f => f.Statement), "no flag"), Days(strong.Select(f => f.SinceDate))),
            PlantedAnswer.ActionHelped => (
                helped.Count > 0, Told(effects.Where(e => e.PracticeChange is null && e.Registration == planted.Registration).Select(e => e.Statement), "no flag that was helped"),
                Days(helped.Select(f => f.SinceDate))),
            PlantedAnswer.PracticeHelped => (practice.Count > 0, Told(practice.Select(e => e.Statement), "not said to have helped"), Days(practice.Select(e => e.ActionDate))),
            PlantedAnswer.Asked => (asked.Count > 0, Told(asked.SelectMany(q => q.Questions), "not asked about"), Days(asked.Select(q => q.SinceDate))),
            PlantedAnswer.NotCalled => (strong.Count == 0, Told(strong.Select(f => f.Statement), "no flag, as it should be"), ""),
            _ => throw new InvalidOperationException($"Nothing says what should come of {planted.Answer}."),
        };
    }

    private static string Told(IEnumerable<string> sentences, string none) => string.Join('\n', sentences.DefaultIfEmpty(none));

    private static string Days(IEnumerable<Google.Type.Date?> days) =>
        string.Join('\n', days.OfType<Google.Type.Date>().Select(d => Day(new DateOnly(d.Year, d.Month, d.Day))));

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private void PrintOthers(IReadOnlyList<Flag> others)
    {
        var aircraft = fleet.Records.Count(r => r.Aircraft is not null);
        AnsiConsole.MarkupLineInterpolated(
            $"False calls, of flags and watches that stand and that nobody planted: {others.Count(f => f.Tier == FlagTier.Flag)} and {others.Count(f => f.Tier == FlagTier.Watch)}. In {RecordYears:0} years of {aircraft} aircraft chance alone raises some {RecordYears * aircraft / 50:0.0} flags and {5 * RecordYears * aircraft / 50:0} watches; most of them end.");
        foreach (var flag in others)
        {
            AnsiConsole.MarkupLineInterpolated($"  {(flag.Tier == FlagTier.Flag ? "flag" : "watch")}: {flag.Statement}");
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
        grid.AddRow("To answer", Markup.Escape("the pages take you for Demo director (synthetic)"));
        AnsiConsole.Write(grid);
        AnsiConsole.MarkupLine("Statistics support a decision; they never return an aircraft to service.");
    }
}
