using System.Globalization;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.Parameters;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Parameters;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Parameters;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using LookInterval = FleetTrend.Contracts.V1.LookInterval;
using ParameterRevision = FleetTrend.Store.Parameters.ParameterRevision;
using Wire = FleetTrend.Contracts.V1.Parameters;

namespace FleetTrend.Api.Pages.Parameters;

/// <summary>What the trends are computed with, how that changed, and the form that changes it.</summary>
internal sealed class ParametersModel(ParameterStore parameters, FleetNames names, ParameterAnswers answers) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Change = "change";

    private const int MostRevisions = 20;
    private const int EmptyRows = 2;

    /// <summary>The shipped defaults.</summary>
    public static Wire Shipped { get; } = new TrendParameters().ToWire();

    /// <summary>What is in force.</summary>
    public ParameterRevision InForce { get; private set; } = ParameterRevision.Shipped;

    /// <summary>Its values.</summary>
    public Wire Values { get; private set; } = Shipped;

    /// <summary>Changes, newest first, each with what it changed.</summary>
    public IReadOnlyList<(ParameterRevision Revision, IReadOnlyList<string> Changes)> History { get; private set; } = [];

    /// <summary>The page of older changes; null where there is none.</summary>
    public string? NextLink { get; private set; }

    /// <summary>How many look intervals the form has room for.</summary>
    public int Rows => (Posted is null ? Values.LookIntervals.Count : typedRows.Count) + EmptyRows;

    private IReadOnlyList<string> typeGroups = [];
    private IReadOnlyList<string> kinds = [];

    // The rows of the form that were filled in: those that were left empty fall out when it comes back.
    private readonly List<int> typedRows = [];

    /// <summary>Shows them.</summary>
    public Task<IActionResult> OnGetAsync([FromQuery(Name = "from")] string? page, CancellationToken ct) => ShowAsync(page, ct);

    /// <summary>Changes them.</summary>
    public async Task<IActionResult> OnPostAsync(CancellationToken ct)
    {
        var unread = new List<Refusal>();
        var request = new ChangeParametersRequest { Parameters = new Wire(), Note = Typed("note") };
        foreach (var number in ParameterNumbers.All)
            number.Set(request.Parameters, ReadNumber(NameOf(number), Typed(NameOf(number)), number, unread));
        ReadIntervals(request.Parameters, unread);
        if (int.TryParse(Typed("revision"), NumberStyles.None, CultureInfo.InvariantCulture, out var revision))
            request.Revision = revision;
        return await AnswerAsync(
            Change, ParameterAnswers.Changing,
            async caller => unread.Count > 0 ? Answer<ParameterRevision>.Refuse(unread) : await answers.ChangeAsync(request, caller, ct)) is not null
            ? LocalRedirect($"/parameters?done={Change}")
            : await ShowAsync(null, ct);
    }

    /// <summary>The field of a number.</summary>
    public FormField Number(ParameterNumber number)
    {
        var field = Field(Change, NameOf(number), number.Title, $"{number.Meaning} It {number.Rule}.");
        return Posted is null ? field with { Value = ParameterWords.Plain(number.In(Values)) } : field;
    }

    /// <summary>The fields of a look interval.</summary>
    /// <param name="row">Which, from 0; behind the last one fields are empty.</param>
    public IReadOnlyList<FormField> Interval(int row)
    {
        var now = Posted is null && row < Values.LookIntervals.Count ? Values.LookIntervals[row] : new LookInterval();
        return
        [
            One("type_group", "Type group", now.TypeGroup) with { Choices = Choices(typeGroups), NoChoice = "All type groups" },
            One("kind", "Kind of location", now.Kind) with { Choices = Choices(kinds), NoChoice = "All kinds" },
            One("hours", "Hours", ParameterWords.Plain(now.HasHours ? now.Hours : null)),
        ];

        FormField One(string name, string label, string inForce) => Field(Change, RowOf(row) + name, label, isOptional: true) with
        {
            Value = Posted is null ? inForce : row < typedRows.Count ? Typed(RowOf(typedRows[row]) + name) : "",
        };
    }

    private static string NameOf(ParameterNumber number) => $"parameters.{number.Field}";

    private static string RowOf(int row) => string.Create(CultureInfo.InvariantCulture, $"parameters.look_intervals[{row}].");

    private static IReadOnlyList<(string Value, string Words)> Choices(IReadOnlyList<string> names) => [.. names.Select(n => (n, n))];

    /// <summary>Rows that are left empty are none.</summary>
    private void ReadIntervals(Wire into, List<Refusal> unread)
    {
        for (var row = 0; Request.HasFormContentType && Request.Form.ContainsKey(RowOf(row) + "hours"); row++)
        {
            var interval = new LookInterval { TypeGroup = Typed(RowOf(row) + "type_group"), Kind = Typed(RowOf(row) + "kind") };
            var typed = Typed(RowOf(row) + "hours");
            if (typed.Length == 0 && interval is { TypeGroup: "", Kind: "" })
                continue;
            if (ReadNumber(RowOf(typedRows.Count) + "hours", typed, ParameterNumbers.LookInterval, unread) is { } hours)
                interval.Hours = hours;
            into.LookIntervals.Add(interval);
            typedRows.Add(row);
        }
    }

    private static double? ReadNumber(string name, string typed, ParameterNumber number, List<Refusal> unread)
    {
        if (typed.Length == 0)
            return null;
        if (double.TryParse(typed, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && (number.Decimals > 0 || (value is >= int.MinValue and <= int.MaxValue && value == Math.Floor(value))))
        {
            return value;
        }

        unread.Add(new Refusal(name, typed, Reasons.PatternMismatch, number.Rule));
        return null;
    }

    private async Task<IActionResult> ShowAsync(string? page, CancellationToken ct)
    {
        InForce = await parameters.ReadAsync(asOf: null, ct);
        Values = ValuesOf(InForce);
        typeGroups = await names.ReadAsync(NameKind.TypeGroup, ct);
        kinds = await names.ReadAsync(NameKind.LocationKind, ct);
        try
        {
            var listed = await parameters.ListAsync(MostRevisions, page, ct);
            NextLink = listed.NextPageToken is { } next ? $"/parameters?from={Uri.EscapeDataString(next)}#history" : null;
            var before = NextLink is null ? ParameterRevision.Shipped : (await parameters.ListAsync(1, listed.NextPageToken, ct)).Items[0];
            History = [.. listed.Items.Zip(listed.Items.Skip(1).Append(before), (now, was) => (now, ParameterWords.Changes(ValuesOf(was), ValuesOf(now))))];
            return Page();
        }
        catch (FormatException)
        {
            return BadRequest();
        }
    }

    private static Wire ValuesOf(ParameterRevision revision) => TrendParameters.Read(revision.ValuesJson, revision.Revision).ToWire();
}
