using FleetTrend.Api.Access;
using FleetTrend.Intake;
using FleetTrend.Store.Keys;
using Google.Rpc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Forms;

/// <summary>A page with forms. Most stand for a call of the contract: whoever may not make the call gets no form, and is not
/// let in when he sends one all the same. Who answers is who has signed in.</summary>
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

    /// <summary>Who reads the page; on one that is open to all, nobody where nobody has signed in.</summary>
    public Caller Reader => HttpContext.Features.Get<Caller>() is { Role: not null } person ? person : Caller.Nobody;

    /// <summary>Whether the reader may make a call.</summary>
    public bool May(string method) => CallScopes.Find(method).Any(Reader.Has);

    /// <summary>Why the reader gets no form, a sentence or two; null where there is one.</summary>
    /// <param name="what">What the form would do: <c>Acknowledging a flag</c>.</param>
    /// <param name="method">The call that it stands for.</param>
    public string? WhyNot(string what, string method) => WhyNot(what, CallScopes.Find(method));

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

    /// <summary>A field for a password, which never comes back.</summary>
    /// <param name="form">The form.</param>
    /// <param name="name">The field.</param>
    /// <param name="label">Its label.</param>
    /// <param name="isNew">Whether it is chosen here, for the browser's list of passwords.</param>
    /// <param name="hint">What it must be.</param>
    public FormField Password(string form, string name, string label, bool isNew, string hint = "") => Field(form, name, label, hint) with
    {
        Value = "",
        Type = "password",
        Autocomplete = isNew ? "new-password" : "current-password",
    };

    /// <summary>Why the reader gets no form, where it stands for no call but takes one of these scopes; null where there is one.</summary>
    protected string? WhyNot(string what, IReadOnlyList<KeyScope> needed) =>
        needed.Any(Reader.Has) ? null
        : $"{what} takes {RoleWords.WhoHas(needed)}. "
            + (Reader.Role is { } role ? $"{Reader.Name} is signed in as {RoleWords.One(role)}." : "Nobody is signed in here.");

    /// <summary>
    /// What was typed into a field, without blanks at its ends; browsers send line ends of two characters, people typed one.
    /// </summary>
    protected string Typed(string name) => TypedAsItIs(name).ReplaceLineEndings("\n").Trim();

    /// <summary>What was typed into a field, every character of it: a password.</summary>
    protected string TypedAsItIs(string name) => Request.HasFormContentType ? Request.Form[name].ToString() : "";

    /// <summary>Does what a form asks for, as the call that it stands for.</summary>
    /// <param name="form">The form.</param>
    /// <param name="method">The call.</param>
    /// <param name="answer">Does it.</param>
    /// <returns>What came of it; null where it was refused, and the page says why.</returns>
    protected Task<T?> AnswerAsync<T>(string form, string method, Func<Caller, Task<Answer<T>>> answer)
        where T : class => AnswerAsync(form, method, CallScopes.Find(method), answer);

    /// <summary>Does what a form asks for that takes one of these scopes.</summary>
    protected Task<T?> AnswerAsync<T>(string form, string what, IReadOnlyList<KeyScope> needed, Func<Caller, Task<Answer<T>>> answer)
        where T : class => TakeAsync(form, what, async () =>
    {
        using var admitted = HttpContext.RequestServices.GetRequiredService<CallGate>().Admit(Reader, needed);
        return await answer(Reader);
    });

    /// <summary>Does what a form asks for that is open to all.</summary>
    /// <param name="form">The form.</param>
    /// <param name="what">What it is, for the log: its page or call.</param>
    /// <param name="answer">Does it, or throws a <see cref="CallRefusedException"/>.</param>
    protected async Task<T?> TakeAsync<T>(string form, string what, Func<Task<Answer<T>>> answer)
        where T : class
    {
        Posted = form;
        try
        {
            var given = await answer();
            Refusals = given.Refusals;
            if (Refusals.Count > 0)
                Response.StatusCode = StatusOf(Refusals[0].Reason.Code);
            return given.Value;
        }
        catch (CallRefusedException refusal)
        {
            var told = HttpContext.RequestServices.GetRequiredService<RefusedCalls>().Answer(refusal, what, HttpContext);
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
