using System.Globalization;
using System.Text.RegularExpressions;
using FleetTrend.Records;
using FleetTrend.Records.Texts;
using Date = Google.Type.Date;

namespace FleetTrend.Intake.Rules;

/// <summary>
/// Reads the fields of one message and collects every rule that is broken. A field that breaks one comes back as a default,
/// so that reading goes on; what was read counts only where <see cref="Refusals"/> is empty at the end.
/// </summary>
internal sealed class FieldReader
{
    public const double MaxHours = 200_000;
    public const int DaysAhead = 366;

    /// <summary>What a date must be, as a caller writes it.</summary>
    public const string DayRule = """must be a date such as {"year": 2026, "month": 2, "day": 3}""";

    private static readonly DateOnly Earliest = new(1950, 1, 1);

    private readonly List<Refusal> refusals;
    private readonly string prefix;
    private readonly DateOnly today;

    public FieldReader(DateOnly today)
        : this([], "", today)
    {
    }

    private FieldReader(List<Refusal> refusals, string prefix, DateOnly today)
    {
        this.refusals = refusals;
        this.prefix = prefix;
        this.today = today;
    }

    /// <summary>Rules broken so far, by this reader and all that came from it.</summary>
    public IReadOnlyList<Refusal> Refusals => refusals;

    /// <summary>A reader of the message in that field.</summary>
    public FieldReader At(string field) => new(refusals, prefix + field + ".", today);

    /// <summary>A broken rule of a text.</summary>
    /// <param name="field">The field.</param>
    /// <param name="value">What it held.</param>
    /// <param name="reason">Why it is refused.</param>
    /// <param name="rule">What it must be.</param>
    /// <param name="nearest">The nearest right value, where there is one.</param>
    public void Refuse(string field, string value, Reason reason, string rule, string? nearest = null) =>
        refusals.Add(new Refusal(prefix + field, value, reason, rule) { Nearest = nearest });

    /// <summary>A broken rule of what is written without quotes: a number, a date, a count, a word of the contract.</summary>
    public void RefuseBare(string field, string value, Reason reason, string rule) =>
        refusals.Add(new Refusal(prefix + field, value, reason, rule) { IsBare = true });

    /// <summary>One line of text; a length from <paramref name="min"/> (0: may be empty) to <paramref name="max"/>.</summary>
    public string Line(string field, string value, int min, int max)
    {
        var rule = $"must be {(min == 0 ? "up to" : $"{min} to")} {max} printable characters without a space at either end";
        if (CheckLength(field, value, min, max, rule)
            && (value.EnumerateRunes().Any(ForeignText.IsHidden) || value != value.Trim()))
        {
            Refuse(field, value, Reasons.TextNotPrintable, rule);
        }

        return value;
    }

    /// <summary>Text for people, of several lines where they like: breaks and tabs are the only controls. Null where empty.</summary>
    public string? Note(string field, string value, int max)
    {
        var rule = $"must be up to {max.ToString("#,0", CultureInfo.InvariantCulture)} printable characters, line breaks and tabs among them, "
            + "without a space at either end";
        if (CheckLength(field, value, 0, max, rule)
            && (value.EnumerateRunes().Any(r => ForeignText.IsHidden(r) && r.Value is not ('\n' or '\r' or '\t')) || value != value.Trim()))
        {
            Refuse(field, value, Reasons.TextNotPrintable, rule);
        }

        return value.Length == 0 ? null : value;
    }

    /// <summary>Text that matches a pattern; <paramref name="rule"/> says it in words.</summary>
    public string Name(string field, string value, Regex pattern, string rule)
    {
        if (value.Length == 0)
            Refuse(field, value, Reasons.FieldRequired, rule);
        else if (!pattern.IsMatch(value))
            Refuse(field, value, Reasons.PatternMismatch, rule);
        return value;
    }

    /// <summary>A required day.</summary>
    public DateOnly Day(string field, Date? value)
    {
        if (value is null)
        {
            Refuse(field, "", Reasons.FieldRequired, DayRule);
            return default;
        }

        return DayOf(field, value);
    }

    /// <summary>A day that may be absent.</summary>
    public DateOnly? OptionalDay(string field, Date? value) => value is null ? null : DayOf(field, value);

    /// <summary>Hours with one decimal from <paramref name="min"/> to <see cref="MaxHours"/>. Not given is refused: it is not 0.</summary>
    public Hours Hours(string field, bool given, double value, double min = 0)
    {
        var rule = $"must be hours from {min.ToString("#,0", CultureInfo.InvariantCulture)} to 200,000 with at most one decimal";
        if (!given)
            Refuse(field, "", Reasons.FieldRequired, rule);
        else if (!double.IsFinite(value))
            RefuseBare(field, Number(value), Reasons.NumberNotFinite, rule);
        else if (value < min || value > MaxHours)
            RefuseBare(field, Number(value), Reasons.NumberOutOfRange, rule);
        else if (!Records.Hours.TryFrom(value, out var hours))
            RefuseBare(field, Number(value), Reasons.TooManyDecimals, rule);
        else
            return hours;
        return Records.Hours.Zero;
    }

    /// <summary>A number above 0 and up to <paramref name="max"/>, or null where absent.</summary>
    public double? Size(string field, bool given, double value, double max)
    {
        var rule = $"must be a number above 0 and up to {max.ToString("#,0", CultureInfo.InvariantCulture)}";
        if (!given)
            return null;
        if (!double.IsFinite(value))
            RefuseBare(field, Number(value), Reasons.NumberNotFinite, rule);
        else if (value <= 0 || value > max)
            RefuseBare(field, Number(value), Reasons.NumberOutOfRange, rule);
        return value;
    }

    /// <summary>A wire enum value as the domain's; both use the same numbers.</summary>
    /// <param name="field">Field.</param>
    /// <param name="value">The wire value.</param>
    /// <param name="whenUnspecified">What 0 (not told) means; null where a value is required.</param>
    public TDomain Choice<TWire, TDomain>(string field, TWire value, TDomain? whenUnspecified = null)
        where TWire : struct, Enum
        where TDomain : struct, Enum
    {
        var number = Convert.ToInt32(value, CultureInfo.InvariantCulture);
        if (number == 0 && whenUnspecified is { } meaning)
            return meaning;
        var domain = (TDomain)Enum.ToObject(typeof(TDomain), number);
        if (number != 0 && Enum.IsDefined(domain))
            return domain;
        RefuseBare(field, number == 0 ? "" : number.ToString(CultureInfo.InvariantCulture), number == 0 ? Reasons.FieldRequired : Reasons.EnumUnknown,
            $"must be one of {string.Join(", ", ContractWords.All<TWire>())}");
        return default;
    }

    /// <summary>A wire enum value of a question, where 0 asks for all.</summary>
    public void Filter<TWire>(string field, TWire value)
        where TWire : struct, Enum
    {
        if (!Enum.IsDefined(value))
            RefuseBare(field, value.ToString(), Reasons.EnumUnknown, $"must be one of {string.Join(", ", ContractWords.All<TWire>())}, or absent");
    }

    /// <summary>A number as text: the shortest that reads back the same.</summary>
    public static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private DateOnly DayOf(string field, Date value)
    {
        var text = $"{value.Year:0000}-{value.Month:00}-{value.Day:00}";
        if (value.Year is < 1 or > 9999 || value.Month is < 1 or > 12
            || value.Day < 1 || value.Day > DateTime.DaysInMonth(value.Year, value.Month))
        {
            RefuseBare(field, text, Reasons.DateInvalid, DayRule);
            return default;
        }

        var day = new DateOnly(value.Year, value.Month, value.Day);
        if (day < Earliest || day > today.AddDays(DaysAhead))
            RefuseBare(field, text, Reasons.DateOutOfRange, "must be a day from 1950-01-01 to 366 days after today");
        return day;
    }

    private bool CheckLength(string field, string value, int min, int max, string rule)
    {
        if (value.Length == 0)
        {
            if (min > 0)
                Refuse(field, "", Reasons.FieldRequired, rule);
            return false;
        }

        // Characters, not UTF-16 units; a text of twice the limit in units cannot hold it.
        var length = value.Length > max * 2 ? int.MaxValue : value.EnumerateRunes().Count();
        if (length < min)
            Refuse(field, value, Reasons.PatternMismatch, rule);
        else if (length > max)
            Refuse(field, value, Reasons.TextTooLong, rule);
        return length >= min && length <= max;
    }
}
