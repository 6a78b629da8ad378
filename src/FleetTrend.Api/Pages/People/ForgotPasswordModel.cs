using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.People;
using FleetTrend.Intake.Rules;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Pages.People;

/// <summary>Has a link for a new password mailed. The answer is the same whether anybody has the address.</summary>
internal sealed class ForgotPasswordModel(AccountMails mails) : FormPage
{
    /// <summary>Name of the form.</summary>
    public const string Ask = "ask";

    /// <summary>Whether this server sends mails.</summary>
    public bool IsPossible => mails.IsPossible;

    /// <summary>Asks for the mail.</summary>
    public IActionResult OnPost()
    {
        if (Typed("address") is { Length: <= PersonRules.MostAddressLength } address)
            mails.Ask(address);
        return LocalRedirect("/forgot-password?done=ask");
    }
}
