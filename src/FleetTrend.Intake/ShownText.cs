using System.Globalization;
using System.Text;
using FleetTrend.Records.Texts;

namespace FleetTrend.Intake;

/// <summary>A caller's text as an answer may repeat it: short, and with nothing in it that a terminal or a log could take for its own.</summary>
internal static class ShownText
{
    private const int MostCharacters = 120;

    /// <summary>The first characters, hidden ones written as \uXXXX.</summary>
    public static string Clean(string value)
    {
        var text = new StringBuilder();
        foreach (var rune in value.EnumerateRunes().Take(MostCharacters))
        {
            if (ForeignText.IsHidden(rune))
                text.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
            else
                text.Append(rune.ToString());
        }

        return text.ToString();
    }
}
