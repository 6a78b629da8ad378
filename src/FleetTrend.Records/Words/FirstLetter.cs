namespace FleetTrend.Records.Words;

/// <summary>The first letter of words that begin a sentence, or go on within one.</summary>
public static class FirstLetter
{
    /// <summary>With a capital first letter, to begin a sentence.</summary>
    /// <param name="text">The words; empty stays empty.</param>
    public static string Capital(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
    }

    /// <summary>With a small first letter, to go on within a sentence.</summary>
    /// <param name="text">The words; empty stays empty.</param>
    public static string Small(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 ? text : char.ToLowerInvariant(text[0]) + text[1..];
    }
}
