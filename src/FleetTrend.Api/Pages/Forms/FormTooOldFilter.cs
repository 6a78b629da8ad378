using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Core.Infrastructure;
using Microsoft.AspNetCore.Mvc.Filters;

namespace FleetTrend.Api.Pages.Forms;

/// <summary>Says what to do where a form comes without the mark that it came from our page: after signing in again, for one.</summary>
internal sealed class FormTooOldFilter : IAlwaysRunResultFilter
{
    private const string Page =
        """
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
        <title>Form not taken - FleetTrend</title><link rel="stylesheet" href="/site.css"></head>
        <body><main id="main"><h1>Form not taken</h1>
        <p>Nothing was changed. The form was opened before you signed in or out, or did not come from a page of ours.</p>
        <p>Go back, copy what you typed, load the page anew, and send it again. <a href="/">First page</a></p></main></body></html>
        """;

    /// <inheritdoc/>
    public void OnResultExecuting(ResultExecutingContext context)
    {
        if (context.Result is IAntiforgeryValidationFailedResult)
            context.Result = new ContentResult { StatusCode = StatusCodes.Status400BadRequest, ContentType = "text/html; charset=utf-8", Content = Page };
    }

    /// <inheritdoc/>
    public void OnResultExecuted(ResultExecutedContext context)
    {
    }
}
