using System.Globalization;
using FleetTrend.Intake;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Words;
using FleetTrend.Store;
using FleetTrend.Store.Codes;
using FleetTrend.Store.DataProblems;
using FleetTrend.Store.HeldRecords;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Results;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.DataProblems;

/// <summary>Data problems by state, what people answered, and the records that wait.</summary>
internal sealed class DataProblemsModel(
    DataProblemStore problems, HeldRecordStore held, CodeStore codes, FreshnessReader freshness, OutboxStore outbox, NameFilters names) : PageModel
{
    private const int MostProblems = 100;
    private const int MostCodes = 100;
    private const int MostMarks = 100;
    private const int MostKeys = 4;
    private const int MostMails = 50;

    // Later than anything stored: all that waits now.
    private static readonly DateTimeOffset Now = new(9000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The state shown.</summary>
    public DataProblemState State { get; private set; } = DataProblemState.Open;

    /// <summary>The only aircraft shown; null for all.</summary>
    public string? Registration { get; private set; }

    /// <summary>How fresh the problems are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>Why there is nothing to show of the mark that was asked for; null where it is registered.</summary>
    public Refusal? UnknownMark { get; private set; }

    /// <summary>Data problems in each state.</summary>
    public IReadOnlyDictionary<DataProblemState, int> Counts { get; private set; } = new Dictionary<DataProblemState, int>();

    /// <summary>Records that wait now.</summary>
    public int HeldRecords { get; private set; }

    /// <summary>Codes that have no meaning yet, as far as they are listed.</summary>
    public int UnmappedCodes { get; private set; }

    /// <summary>Whether there are more such codes than are listed.</summary>
    public bool HasMoreCodes { get; private set; }

    /// <summary>The problems as HTML.</summary>
    public string ProblemsHtml { get; private set; } = "";

    /// <summary>What waits as HTML; empty where nothing does.</summary>
    public string WaitingHtml { get; private set; } = "";

    /// <summary>Mails that were given up, as far as they are listed.</summary>
    public int MailsGivenUp { get; private set; }

    /// <summary>True where more were given up than are listed.</summary>
    public bool HasMoreMails { get; private set; }

    /// <summary>Those mails as HTML; empty where there is none.</summary>
    public string MailsHtml { get; private set; } = "";

    /// <summary>The page of older problems; null where there is none.</summary>
    public string? NextLink { get; private set; }

    /// <summary>A state as the page calls it.</summary>
    public static string Words(DataProblemState state) => state switch
    {
        DataProblemState.Open => "Open",
        DataProblemState.Closed => "Closed by a person",
        _ => "Gone by themselves",
    };

    /// <summary>Address of the page that shows a state.</summary>
    /// <param name="state">The state.</param>
    public string Link(DataProblemState state) => Address(state, Registration, null);

    /// <summary>Reads what the page shows.</summary>
    /// <param name="state">open, closed or gone; anything else shows what is open.</param>
    /// <param name="registration">Registration mark; empty for all.</param>
    /// <param name="page">Token of a page of older problems; empty for the newest.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IActionResult> OnGetAsync(string? state, string? registration, [FromQuery(Name = "from")] string? page, CancellationToken ct)
    {
        State = Enum.TryParse<DataProblemState>(state, ignoreCase: true, out var told) && Enum.IsDefined(told) ? told : DataProblemState.Open;
        Registration = string.IsNullOrWhiteSpace(registration) || registration.Contains('\0') ? null : registration.ToUpperInvariant();
        Page<StoredDataProblem> listed;
        try
        {
            listed = await problems.ListAsync(new DataProblemFilter(State, Registration: Registration), MostProblems, page, ct);
        }
        catch (FormatException)
        {
            return BadRequest();
        }

        Freshness = await freshness.ReadAsync(ct);
        if (Registration is not null && await names.OfRegistrationAsync(Registration, ct) is { } unknown)
        {
            UnknownMark = unknown;
            Response.StatusCode = StatusCodes.Status404NotFound;
            return Page();
        }

        Counts = await problems.CountAsync(ct);
        ProblemsHtml = ReportHtml.Render(DataProblemsSection(listed.Items));
        NextLink = listed.NextPageToken is { } next ? Address(State, Registration, next) : null;
        await ReadWaitingAsync(ct);
        var mails = await outbox.ListAsync(MailState.GivenUp, MostMails, pageToken: null, ct);
        (MailsGivenUp, HasMoreMails) = (mails.Items.Count, mails.NextPageToken is not null);
        if (MailsGivenUp > 0)
            MailsHtml = ReportHtml.Render(MailsSection(mails.Items));
        return Page();
    }

    private async Task ReadWaitingAsync(CancellationToken ct)
    {
        var waiting = await held.CountAsync(Now, ct);
        var unmapped = await codes.ListUnmappedAsync(source: null, MostCodes, pageToken: null, ct);
        HeldRecords = waiting.Values.Sum();
        UnmappedCodes = unmapped.Items.Count;
        HasMoreCodes = unmapped.NextPageToken is not null;
        if (HeldRecords > 0)
            WaitingHtml = ReportHtml.Render(WaitingSection(waiting, unmapped.Items));
    }

    private ReportSection DataProblemsSection(IReadOnlyList<StoredDataProblem> listed)
    {
        if (listed.Count == 0)
        {
            var none = Freshness.AsOf is null ? "No refresh has run yet, so nothing has been checked." : "None.";
            return new ReportSection("data-problems", Words(State), [new Block.Paragraph(none)]);
        }

        Column[] columns = State switch
        {
            DataProblemState.Open => [new("No."), new("Aircraft"), new("Problem"), new("Records"), new("Since")],
            DataProblemState.Closed => [new("No."), new("Aircraft"), new("Problem"), new("Records"), new("Since"), new("Closed")],
            _ => [new("No."), new("Aircraft"), new("Problem"), new("Records"), new("Since"), new("Gone")],
        };
        return new ReportSection("data-problems", Words(State), [new Block.Table($"Data problems, newest first: {Words(State).ToLowerInvariant()}", columns, [.. listed.Select(Row)])]);
    }

    private IReadOnlyList<Line> Row(StoredDataProblem stored)
    {
        var problem = stored.Found;
        var kind = Enum.TryParse<DataProblemKind>(problem.Kind, out var known) ? DataProblemWords.Name(known) : problem.Kind;
        var aircraft = problem.OtherRegistration is { } other ? $"{problem.Registration}, {other}" : problem.Registration ?? "not known";
        List<Line> cells =
        [
            Line.Join(new Run.Link(
                stored.ProblemId.ToString(CultureInfo.InvariantCulture),
                new Uri(string.Create(CultureInfo.InvariantCulture, $"/data-problems/{stored.ProblemId}"), UriKind.Relative))),
            aircraft,
            Line.Join(new Run.Strong(kind + ". "), $"{DataProblemWords.Description(known, problem.Evidence, problem.Description)} Rule: {problem.Rule}"),
            Keys(problem),
            NumberWords.Moment(stored.SinceTime),
        ];
        if (State == DataProblemState.Closed)
        {
            var still = stored.GoneTime is null ? "The records still say so." : $"Not in the records since {NumberWords.Moment(stored.GoneTime.Value)}.";
            cells.Add(
                $"{ForeignText.Quoted(stored.ClosedBy ?? "")} wrote on {NumberWords.Moment(stored.CloseTime!.Value)}: "
                + $"{ForeignText.Quoted(stored.CloseNote ?? "")} ({still})");
        }
        else if (State == DataProblemState.Gone)
        {
            cells.Add(NumberWords.Moment(stored.GoneTime!.Value));
        }

        return cells;
    }

    private static string Keys(FoundDataProblem problem)
    {
        var named = string.Join(", ", problem.Evidence.Take(MostKeys).Select(k => $"{k.Source} {ForeignText.Identifier(k.SourceRecordId)}"));
        return problem.Evidence.Count > MostKeys ? $"{named} and {problem.Evidence.Count - MostKeys} more" : named;
    }

    private static ReportSection WaitingSection(IReadOnlyDictionary<string, int> waiting, IReadOnlyList<UnmappedCode> unmapped)
    {
        var marks = waiting.OrderByDescending(h => h.Value).ThenBy(h => h.Key, StringComparer.Ordinal).ToList();
        List<Block> blocks =
        [
            new Block.Paragraph("Held records take part in no number. They are released on their own when the aircraft is registered and has the location, and every code of the source has a meaning."),
            new Block.Table(
                marks.Count > MostMarks ? $"Held records by registration mark: the {MostMarks} with most of {marks.Count}" : "Held records by registration mark",
                [new("Registration mark"), new("Records held", true)],
                [.. marks.Take(MostMarks).Select(h => (IReadOnlyList<Line>)[h.Key, NumberWords.Count(h.Value)])]),
        ];
        if (unmapped.Count > 0)
        {
            blocks.Add(new Block.Table(
                "Codes of sources without a meaning",
                [new("Source"), new("Stands for"), new("Code"), new("Records held", true), new("Since")],
                [.. unmapped.Select(c => (IReadOnlyList<Line>)
                    [
                        c.Code.Source, c.Code.Kind.ToString().ToLowerInvariant(), ForeignText.Identifier(c.Code.Code),
                        NumberWords.Count(c.WaitingCount), NumberWords.Moment(c.SinceTime),
                    ])]));
        }

        return new ReportSection("held", "Records held", blocks);
    }

    private static ReportSection MailsSection(IReadOnlyList<StoredMail> mails) =>
        new("mails", "Mails not delivered",
        [
            new Block.Paragraph("Reports that did not reach somebody, newest first. An administrator sees with ListMails to whom and what the mail server said, corrects the address (page Schedules) or the mail server, and sends one again with RetryMail."),
            new Block.Table(
                "Mails that were given up",
                [new("No."), new("Report"), new("Attempts", true), new("Given up")],
                [.. mails.Select(m => (IReadOnlyList<Line>)
                    [$"{m.MailId}", $"{m.ReportId}", NumberWords.Count(m.AttemptCount), NumberWords.Moment(m.EndTime!.Value)])]),
        ]);

    private static string Address(DataProblemState state, string? registration, string? from)
    {
        var query = $"?state={state.ToString().ToLowerInvariant()}";
        if (registration is not null)
            query += $"&registration={Uri.EscapeDataString(registration)}";
        if (from is not null)
            query += $"&from={Uri.EscapeDataString(from)}";
        return "/data-problems" + query;
    }
}
