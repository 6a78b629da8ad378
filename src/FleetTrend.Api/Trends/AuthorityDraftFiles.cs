using System.Globalization;
using System.Text;
using FleetTrend.Api.Access;
using FleetTrend.Results.Reading;
using FleetTrend.Trends.AuthorityDrafts;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Trends;

/// <summary>Drafts for an authority as text files, over plain HTTP; a reader of the pages may have them.</summary>
internal static class AuthorityDraftFiles
{
    /// <summary>Maps them.</summary>
    public static void MapAuthorityDraftFiles(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapGet("/aircraft/{registration}/draft.txt", ReadAsync).RequireAuthorization(PageAccess.Name);
    }

    private static string NameOf(AuthorityDraft draft) =>
        string.Create(CultureInfo.InvariantCulture, $"draft-{draft.Registration}-{draft.FoundDate:yyyy-MM-dd}.txt");

    private static async Task<Results<FileContentHttpResult, ProblemHttpResult>> ReadAsync(
        string registration, [FromQuery] string? source, [FromQuery] string? record,
        ResultReader results, AuthorityDraftReader drafts, CancellationToken ct)
    {
        var all = await results.LatestAsync(ct) is { } published ? await drafts.ReadAsync(published, registration.ToUpperInvariant(), ct) : null;
        var draft = all?.FirstOrDefault(d => d.Key.Source == source && d.Key.SourceRecordId == record);
        if (draft is null)
            return TypedResults.Problem("record: must be a finding of the aircraft that the latest refresh knows", statusCode: StatusCodes.Status404NotFound);
        return draft.Text is { } text
            ? TypedResults.File(Encoding.UTF8.GetBytes(text), "text/plain; charset=utf-8", NameOf(draft))
            : TypedResults.Problem(draft.WhyNot, statusCode: StatusCodes.Status404NotFound);
    }
}
