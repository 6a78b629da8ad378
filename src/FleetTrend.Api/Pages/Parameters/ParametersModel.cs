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
using MakerLimit = FleetTrend.Contracts.V1.MakerLimit;
using ParameterRevision = FleetTrend.Store.Parameters.ParameterRevision;
using Wire = FleetTrend.Contracts.V1.Parameters;

namespace FleetTrend.Api.Pages.Parameters;

/// <summary>What the trends are computed with, how that changed, and the form that changes it.</summary>
internal sealed class ParametersModel(ParameterStore parameters, FleetNames names, ParameterAnswers answers) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Change = "change";

    private const int MostRevisions = 20;

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

    /// <summary>The rows of look intervals in the form.</summary>
    public FormRows IntervalRows => new("look_intervals", Posted is null ? Values.LookIntervals.Count : null, typedIntervals);

    /// <summary>The rows of makers' limits in the form.</summary>
    public FormRows LimitRows => new("maker_limits", Posted is null ? Values.MakerLimits.Count : null, typedLimits);

    private IReadOnlyList<string> typeGroups = [];
    private IReadOnlyList<string> kinds = [];

    private readonly List<int> typedIntervals = [];
    private readonly List<int> typedLimits = [];

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
        ReadLimits(request.Parameters, unread);
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
        return [.. Subject(IntervalRows, row, now.TypeGroup, now.Kind),
            OfRow(IntervalRows, row, "hours", "Hours", ParameterWords.Plain(now.HasHours ? now.Hours : null))];
    }

    /// <summary>The fields of a maker's limit, likewise.</summary>
    public IReadOnlyList<FormField> Limit(int row)
    {
        var now = Posted is null && row < Values.MakerLimits.Count ? Values.MakerLimits[row] : new MakerLimit();
        return
        [
            .. Subject(LimitRows, row, now.TypeGroup, now.Kind),
            OfRow(LimitRows, row, "renewal_hours", "Greatest renewal age, hours", ParameterWords.Plain(now.HasRenewalHours ? now.RenewalHours : null)),
            OfRow(LimitRows, row, "look_hours", "Greatest look interval, hours", ParameterWords.Plain(now.HasLookHours ? now.LookHours : null)),
        ];
    }

    private IEnumerable<FormField> Subject(FormRows rows, int row, string typeGroup, string kind) =>
    [
        OfRow(rows, row, "type_group", "Type group", typeGroup) with { Choices = Choices(typeGroups), NoChoice = "All type groups" },
        OfRow(rows, row, "kind", "Kind of location", kind) with { Choices = Choices(kinds), NoChoice = "All kinds" },
    ];

    private FormField OfRow(FormRows rows, int row, string name, string label, string inForce)
    {
        var field = Field(Change, rows.NameOf(row) + name, label, isOptional: true);
        return field with { Value = Posted is null ? inForce : rows.TypedAs(row) is { } typed ? Typed(rows.NameOf(typed) + name) : "" };
    }

    private static string NameOf(ParameterNumber number) => $"parameters.{number.Field}";

    private static IReadOnlyList<(string Value, string Words)> Choices(IReadOnlyList<string> names) => [.. names.Select(n => (n, n))];

    /// <summary>Rows that are left empty are none.</summary>
    private void ReadIntervals(Wire into, List<Refusal> unread)
    {
        foreach (var (to, row) in TypedRows(IntervalRows, ["type_group", "kind", "hours"]))
        {
            var interval = new LookInterval { TypeGroup = Typed(row + "type_group"), Kind = Typed(row + "kind") };
            if (ReadNumber(to + "hours", Typed(row + "hours"), ParameterNumbers.LookInterval, unread) is { } hours)
                interval.Hours = hours;
            into.LookIntervals.Add(interval);
        }
    }

    private void ReadLimits(Wire into, List<Refusal> unread)
    {
        foreach (var (to, row) in TypedRows(LimitRows, ["type_group", "kind", "renewal_hours", "look_hours"]))
        {
            var limit = new MakerLimit { TypeGroup = Typed(row + "type_group"), Kind = Typed(row + "kind") };
            if (ReadNumber(to + "renewal_hours", Typed(row + "renewal_hours"), ParameterNumbers.MakerRenewal, unread) is { } renewal)
                limit.RenewalHours = renewal;
            if (ReadNumber(to + "look_hours", Typed(row + "look_hours"), ParameterNumbers.MakerLook, unread) is { } look)
                limit.LookHours = look;
            into.MakerLimits.Add(limit);
        }
    }

    /// <summary>The rows that were filled in: the name that each has when the form comes back, and the one under which it was typed.</summary>
    private IEnumerable<(string To, string Row)> TypedRows(FormRows rows, string[] fields)
    {
        for (var row = 0; Request.HasFormContentType && Request.Form.ContainsKey(rows.NameOf(row) + fields[^1]); row++)
        {
            if (Array.TrueForAll(fields, f => Typed(rows.NameOf(row) + f).Length == 0))
                continue;
            var to = rows.NameOf(rows.Typed.Count);
            rows.Typed.Add(row);
            yield return (to, rows.NameOf(row));
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
