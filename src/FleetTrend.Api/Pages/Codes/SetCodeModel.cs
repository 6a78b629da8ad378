using FleetTrend.Api.Codes;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Contracts.V1;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Words;
using FleetTrend.Store.Codes;
using FleetTrend.Store.Layouts;
using Microsoft.AspNetCore.Mvc;
using Kind = FleetTrend.Records.Sources.CodeKind;
using Name = FleetTrend.Records.Sources.SourceCode;
using WireCode = FleetTrend.Contracts.V1.SourceCode;

namespace FleetTrend.Api.Pages.Codes;

/// <summary>Says what a code of a source means.</summary>
internal sealed class SetCodeModel(CodeStore codes, LayoutStore layouts, CodeAnswers answers) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Set = "set";

    private const int LayoutsPerPage = 100;

    /// <summary>The source.</summary>
    public string Source { get; private set; } = "";

    /// <summary>The code.</summary>
    public string Code { get; private set; } = "";

    /// <summary>What it stands for; null where the address says nothing that is known.</summary>
    public Kind? CodeKind { get; private set; }

    /// <summary>What it means now, in words; null where nothing.</summary>
    public string? Now { get; private set; }

    /// <summary>What can be chosen.</summary>
    public IReadOnlyList<(string Value, string Words)> Choices { get; private set; } = [];

    /// <summary>Name of the field that is chosen.</summary>
    public string Chosen => $"code.{CodeKind?.ToString().ToLowerInvariant()}";

    /// <summary>Where a code is given its meaning.</summary>
    public static string Address(Name code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return $"/codes/set?source={Uri.EscapeDataString(code.Source)}&kind={code.Kind.ToString().ToLowerInvariant()}&code={Uri.EscapeDataString(code.Code)}";
    }

    /// <summary>What a kind of code stands for.</summary>
    public static string Words(Kind kind) => kind switch
    {
        Kind.Location => "a location",
        Kind.Condition => "a condition",
        _ => "an action",
    };

    /// <summary>Shows the form.</summary>
    public Task<IActionResult> OnGetAsync(string? source, string? kind, string? code, CancellationToken ct) => ShowAsync(source, kind, code, ct);

    /// <summary>Gives the code its meaning.</summary>
    public async Task<IActionResult> OnPostAsync(string? source, string? kind, string? code, CancellationToken ct)
    {
        var request = new SetCodeRequest { Code = new WireCode { Source = source ?? "", Code = code ?? "" } };
        if (Enum.TryParse<Kind>(kind, ignoreCase: true, out var known) && Enum.IsDefined(known))
        {
            CodeKind = known;
            switch (known)
            {
                case Kind.Location:
                    request.Code.Location = Typed(Chosen);
                    break;
                case Kind.Condition:
                    request.Code.Condition = Enum.TryParse<Condition>(Typed(Chosen), out var condition) ? condition : Condition.Unspecified;
                    break;
                default:
                    request.Code.Action = Enum.TryParse<ActionKind>(Typed(Chosen), out var action) ? action : ActionKind.Unspecified;
                    break;
            }
        }

        return await AnswerAsync(Set, CodeAnswers.Setting, caller => answers.SetAsync(request, caller, ct)) is not null && CodeKind is { } set
            ? LocalRedirect(Address(new Name(source!, set, code!)) + $"&done={Set}")
            : await ShowAsync(source, kind, code, ct);
    }

    private async Task<IActionResult> ShowAsync(string? source, string? kind, string? code, CancellationToken ct)
    {
        (Source, Code) = (source ?? "", code ?? "");
        CodeKind = Enum.TryParse<Kind>(kind, ignoreCase: true, out var known) && Enum.IsDefined(known) ? known : null;
        if (CodeKind is not { } stands || Source.Contains('\0') || Code.Contains('\0') || Source.Length == 0 || Code.Length == 0)
        {
            CodeKind = null;
            if (Posted is null)
                Response.StatusCode = StatusCodes.Status404NotFound;
            return Page();
        }

        if (!May(CodeAnswers.Setting))
            return Page();
        var name = new Name(Source, stands, Code);
        Now = (await codes.ReadAsync([name], ct)).GetValueOrDefault(name) switch
        {
            CodeMeaning.Location location => $"{LocationWords.Name(location.Path)} ({location.Path})",
            CodeMeaning.Condition condition => ConditionWords.One(condition.Value),
            CodeMeaning.Action action => ActionWords.Done(action.Value),
            _ => null,
        };
        Choices = stands switch
        {
            Kind.Location => await LocationsAsync(ct),
            Kind.Condition => [.. Enum.GetValues<FleetTrend.Records.Findings.Condition>().Select(value => (value.ToString(), ConditionWords.One(value)))],
            _ => [.. Enum.GetValues<FleetTrend.Records.Actions.ActionKind>().Select(value => (value.ToString(), ActionWords.Done(value)))],
        };
        return Page();
    }

    private async Task<IReadOnlyList<(string Value, string Words)>> LocationsAsync(CancellationToken ct)
    {
        var paths = new SortedSet<string>(StringComparer.Ordinal);
        string? next = null;
        do
        {
            var page = await layouts.ListAsync(LayoutsPerPage, next, ct);
            paths.UnionWith(page.Items.SelectMany(layout => layout.Locations.Select(location => location.Path)));
            next = page.NextPageToken;
        }
        while (next is not null);
        return [.. paths.Select(path => (path, $"{LocationWords.Name(path)} ({path})"))];
    }
}
