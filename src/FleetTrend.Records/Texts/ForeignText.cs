using System.Globalization;
using System.Text;

namespace FleetTrend.Records.Texts;

/// <summary>
/// Text that a sender or a person wrote, as our own sentences may repeat it: between quotation marks, in one line, and with nothing in
/// it that could hide, turn or end what stands around it.
/// </summary>
public static class ForeignText
{
    private const char OpeningMark = '\u201c';
    private const char ClosingMark = '\u201d';

    /// <summary>
    /// True for a character that does not show or that turns the direction of others: controls, line separators, formatting (the
    /// bidirectional controls and zero-width characters among them), fillers that look like nothing, unpaired and unassigned.
    /// Source: Unicode general categories, and Default_Ignorable_Code_Point less the variation selectors 15 and 16, which choose
    /// between the text and the picture of a sign.
    /// </summary>
    public static bool IsHidden(Rune rune) =>
        rune == Rune.ReplacementChar
        || rune.Value is 0x034F or 0x115F or 0x1160 or 0x17B4 or 0x17B5 or (>= 0x180B and <= 0x180F) or 0x2800 or 0x3164
            or (>= 0xFE00 and <= 0xFE0D) or 0xFFA0 or (>= 0xE0000 and <= 0xE0FFF)
        || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
            or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned;

    /// <summary>In one line: breaks and tabs are blanks, other hidden characters are written as <c>\uXXXX</c>.</summary>
    public static string OneLine(string text) => Shown(text, keepsBreaks: false);

    /// <summary>With its breaks and tabs as they are, other hidden characters written as <c>\uXXXX</c>.</summary>
    public static string WithBreaks(string text) => Shown(text, keepsBreaks: true);

    /// <summary>Between quotation marks and in one line, breaks as <c>/</c>; marks within become single ones, so that none ends it.</summary>
    public static string Quoted(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = text.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var inner = new StringBuilder(OneLine(string.Join(" / ", lines)));
        foreach (var mark in "\"\u201c\u201d\u201e\u201f\u00ab\u00bb\u2033\u301d\u301e\uff02")
            inner.Replace(mark, '\'');
        return $"{OpeningMark}{inner}{ClosingMark}";
    }

    /// <summary>An identifier: as it is where it cannot be read as words, quoted where it has a blank or a hidden character.</summary>
    public static string Identifier(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.EnumerateRunes().Any(r => Rune.IsWhiteSpace(r) || IsHidden(r)) ? Quoted(text) : text;
    }

    /// <summary>Whether a piece of a line leaves a quotation open: its last mark opens one.</summary>
    /// <param name="piece">A piece of a line that our sentences make up.</param>
    /// <param name="isOpen">Whether one was open before it.</param>
    public static bool IsOpenAfter(string piece, bool isOpen)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var last = piece.LastIndexOfAny([OpeningMark, ClosingMark]);
        return last < 0 ? isOpen : piece[last] == OpeningMark;
    }

    private static string Shown(string text, bool keepsBreaks)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!text.EnumerateRunes().Any(IsHidden))
            return text;
        var shown = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (keepsBreaks && rune.Value is ('\n' or '\r' or '\t'))
                shown.Append(rune.ToString());
            else if (IsBreak(rune))
                shown.Append(' ');
            else if (IsHidden(rune))
                shown.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
            else
                shown.Append(rune.ToString());
        }

        return shown.ToString();
    }

    private static bool IsBreak(Rune rune) => rune.Value is '\n' or '\r' or '\t' or '\v' or '\f' or 0x85 or 0x2028 or 0x2029;
}
