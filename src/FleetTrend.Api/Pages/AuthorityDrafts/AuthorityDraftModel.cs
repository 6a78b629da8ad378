using FleetTrend.Intake;
using FleetTrend.Results.Reading;
using FleetTrend.Trends.AuthorityDrafts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.AuthorityDrafts;

/// <summary>Drafts for an authority: those of an aircraft by link, or the one of a finding as text to copy.</summary>
internal sealed class AuthorityDraftModel(ResultReader results, AuthorityDraftReader drafts, NameFilters names) : PageModel
{
    private const int MostLines = 75;

    /// <summary>Its mark, as it is written.</summary>
    public string Registration { get; private set; } = "";

    /// <summary>What the mark is refused with; null where an aircraft has it.</summary>
    public Refusal? UnknownMark { get; private set; }

    /// <summary>Whether a finding was asked for.</summary>
    public bool IsAsked { get; private set; }

    /// <summary>The finding asked for; null where none was, or there is none of that name.</summary>
    public AuthorityDraft? Draft { get; private set; }

    /// <summary>Open and recent findings that may have to be reported; null before the first refresh that knows the aircraft.</summary>
    public IReadOnlyList<AuthorityDraft>? Candidates { get; private set; }

    /// <summary>How many more of them there are.</summary>
    public int More { get; private set; }

    /// <summary>Address of a draft's page.</summary>
    public static string PageOf(AuthorityDraft draft) => $"/aircraft/{Uri.EscapeDataString(draft.Registration)}/draft{Query(draft)}";

    /// <summary>Address of a draft as a file.</summary>
    public static string TextFileOf(AuthorityDraft draft) => $"/aircraft/{Uri.EscapeDataString(draft.Registration)}/draft.txt{Query(draft)}";

    /// <summary>Reads what the page shows.</summary>
    public async Task<IActionResult> OnGetAsync(string registration, [FromQuery] string? source, [FromQuery] string? record, CancellationToken ct)
    {
        Registration = registration.ToUpperInvariant();
        UnknownMark = await names.OfRegistrationAsync(Registration, ct);
        IsAsked = !string.IsNullOrEmpty(record);
        if (UnknownMark is not null)
        {
            Response.StatusCode = StatusCodes.Status404NotFound;
        }
        else if (await results.LatestAsync(ct) is { } published && await drafts.ReadAsync(published, Registration, ct) is { } all)
        {
            List<AuthorityDraft> current = [.. all.Where(d => d.IsCurrent && d.Text is not null)];
            (Candidates, More) = ([.. current.Take(MostLines)], Math.Max(0, current.Count - MostLines));
            Draft = IsAsked ? all.FirstOrDefault(d => d.Key.Source == source && d.Key.SourceRecordId == record) : null;
            if (IsAsked && Draft is null)
                Response.StatusCode = StatusCodes.Status404NotFound;
        }

        return Page();
    }

    private static string Query(AuthorityDraft draft) =>
        $"?source={Uri.EscapeDataString(draft.Key.Source)}&record={Uri.EscapeDataString(draft.Key.SourceRecordId)}";
}
