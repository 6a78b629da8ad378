using FleetTrend.Api.Access;
using FleetTrend.Intake;
using Google.Rpc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Forms;

/// <summary>A page with forms. Each form stands for a call of the contract: whoever may not make the call gets no form, and is not
/// let in when he sends one all the same.</summary>
internal abstract class FormPage : PageModel
{
    /// <summary>The form that was sent; null where none was.</summary>
    public string? Posted { get; private set; }

    /// <summary>The rules that it broke.</summary>
    public IReadOnlyList<Refusal> Refusals { get; private set; } = [];

    /// <summary>Why the call was not let in; null where it was.</summary>
    public string? NotLetIn { get; private set; }

    /// <summary>The form that was just taken; null where none was.</summary>
    public string? Done => Request.Query["done"] is [{ Length: > 0 } done] ? done : null;

    /// <summary>Who reads the page.</summary>
    public Caller Reader => HttpContext.Features.Get<Caller>() ?? PageAccess.Anybody;

    /// <summary>Whether the reader may make a call.</summary>
    public bool May(string method) => CallScopes.Find(method).Any(Reader.Has);

    /// <summary>Why the reader gets no form, a sentence or two; null where there is one.</summary>
    /// <param name="what">What the form would do: <c>Acknowledging a flag</c>.</param>
    /// <param name="method">The call that it stands for.</param>
    public string? WhyNot(string what, string method)
    {
        if (May(method))
            return null;
        var needed = string.Join(" or ", CallScopes.Find(method).Select(CallScopes.NameOf));
        var yours = Reader == PageAccess.Anybody
            ? "Nobody is signed in here"
            : $"Your key \"{Reader.Key.Name}\" has {string.Join(" and ", Reader.Key.Scopes.Select(CallScopes.NameOf))}";
        return $"{what} needs a key with {needed}. {yours}.";
    }

    /// <summary>The link that goes with <see cref="WhyNot"/>.</summary>
    public string SignInWords => Reader == PageAccess.Anybody ? "Sign in" : "Sign in with another key";

    /// <summary>A field of a form, with what was typed where the form comes back.</summary>
    public FormField Field(string form, string name, string label, string hint = "", bool isLong = false, bool isOptional = false) => new()
    {
        Form = form,
        Name = name,
        Label = label,
        Hint = hint,
        IsLong = isLong,
        IsOptional = isOptional,
        Value = Posted == form ? Typed(name) : "",
        Refusals = Posted == form ? [.. Refusals.Where(refusal => refusal.Field == name)] : [],
    };

    /// <summary>
    /// What was typed into a field, without blanks at its ends; browsers send line ends of two characters, people typed one.
    /// </summary>
    protected string Typed(string name) =>
        Request.HasFormContentType ? Request.Form[name].ToString().ReplaceLineEndings("\n").Trim() : "";

    /// <summary>Does what a form asks for, as the call that it stands for.</summary>
    /// <param name="form">The form.</param>
    /// <param name="method">The call.</param>
    /// <param name="answer">Does it.</param>
    /// <returns>What came of it; null where it was refused, and the page says why.</returns>
    protected async Task<T?> AnswerAsync<T>(string form, string method, Func<Caller, Task<Answer<T>>> answer)
        where T : class
    {
        Posted = form;
        try
        {
            using var admitted = HttpContext.RequestServices.GetRequiredService<CallGate>().Admit(Reader, method);
            var given = await answer(Reader);
            Refusals = given.Refusals;
            if (Refusals.Count > 0)
                Response.StatusCode = StatusOf(Refusals[0].Reason.Code);
            return given.Value;
        }
        catch (CallRefusedException refusal)
        {
            var told = HttpContext.RequestServices.GetRequiredService<RefusedCalls>().Answer(refusal, method, HttpContext);
            NotLetIn = told.Message;
            Response.StatusCode = StatusOf(told.Reason.Code);
            return null;
        }
    }

    /// <summary>The HTTP status of a refusal, as the JSON form of the call has it.</summary>
    private static int StatusOf(Code code) => code switch
    {
        Code.Unauthenticated => StatusCodes.Status401Unauthorized,
        Code.PermissionDenied => StatusCodes.Status403Forbidden,
        Code.NotFound => StatusCodes.Status404NotFound,
        Code.AlreadyExists or Code.Aborted => StatusCodes.Status409Conflict,
        Code.ResourceExhausted => StatusCodes.Status429TooManyRequests,
        _ => StatusCodes.Status400BadRequest,
    };
}
