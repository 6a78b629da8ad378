using System.Text.RegularExpressions;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>
/// A text that a spreadsheet would take for a formula gets an apostrophe before it, and loses it when it is read. One that has apostrophes
/// there of its own gets one more, so that every text comes back as it was.
/// </summary>
internal static partial class FormulaGuard
{
    private const char Guard = '\'';

    /// <summary>The text as a cell that no spreadsheet computes.</summary>
    public static string On(string text) => LooksLikeFormula().IsMatch(text) ? Guard + text : text;

    /// <summary>The text that such a cell stands for.</summary>
    public static string Off(string cell) => cell.StartsWith(Guard) && LooksLikeFormula().IsMatch(cell) ? cell[1..] : cell;

    // The second four are the same signs in full width.
    [GeneratedRegex(@"\A'*[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex LooksLikeFormula();
}
