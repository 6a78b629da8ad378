using System.Globalization;
using System.Net.Mail;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of what is told about people who sign in.</summary>
public static class PersonRules
{
    /// <summary>Fewest characters of a password.</summary>
    public const int LeastPasswordLength = 12;

    /// <summary>Most characters of a password.</summary>
    public const int MostPasswordLength = 128;

    /// <summary>Most characters of a mail address.</summary>
    public const int MostAddressLength = 254;

    private const int MostNameLength = 60;

    /// <summary>Every rule that a name and a mail address break.</summary>
    public static IReadOnlyList<Refusal> Check(string name, string address)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(address);
        var reader = new FieldReader(default);
        reader.Line("name", name, 1, MostNameLength);
        if (name.Contains('@', StringComparison.Ordinal))
            reader.Refuse("name", name, Reasons.PatternMismatch, "must be without @: what has one is taken for a mail address");
        reader.Line("address", address, 1, MostAddressLength);
        if (address.Length > 0 && !(MailAddress.TryCreate(address, out var read) && read.Address == address))
            reader.Refuse("address", address, Reasons.PatternMismatch, "must be a mail address, such as lead@shop.example");
        return reader.Refusals;
    }

    /// <summary>The rule that a password breaks: its length is all that counts. What was typed is not repeated.</summary>
    public static IReadOnlyList<Refusal> CheckPassword(string field, string password)
    {
        ArgumentNullException.ThrowIfNull(password);
        var reader = new FieldReader(default);
        if (password.Length is < LeastPasswordLength or > MostPasswordLength)
        {
            reader.RefuseBare(
                field, password.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{password.Length}"), Reasons.PatternMismatch,
                $"must have {LeastPasswordLength} to {MostPasswordLength} characters");
        }

        return reader.Refusals;
    }
}
