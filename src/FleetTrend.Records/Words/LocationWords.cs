namespace FleetTrend.Records.Words;

/// <summary>Location paths and kinds in words.</summary>
public static class LocationWords
{
    /// <summary>A path in words: <c>exhaust/cyl-3/flange-weld</c> reads <c>cyl 3 flange weld</c>; the system is said where it is not the exhaust.</summary>
    public static string Name(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var parts = path.Split('/', StringSplitOptions.RemoveEmptyEntries);
        var shown = parts.Length > 1 && parts[0] == "exhaust" ? parts[1..] : parts;
        return string.Join(' ', shown).Replace('-', ' ');
    }

    /// <summary>The sub-assembly of a path in words: <c>exhaust/cyl-3/flange-weld</c> reads <c>cyl 3</c>.</summary>
    public static string SubAssembly(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.Split('/') is { Length: > 1 } parts ? parts[1].Replace('-', ' ') : "";
    }

    /// <summary>What a path says below its sub-assembly, in words: <c>flange weld</c>; of a path of two parts, its last.</summary>
    public static string Place(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return (path.Split('/') is { Length: > 2 } parts ? string.Join(' ', parts[2..]) : path[(path.LastIndexOf('/') + 1)..]).Replace('-', ' ');
    }

    /// <summary>Several paths: the first few in words, then how many more.</summary>
    /// <param name="paths">The paths, or the first of them.</param>
    /// <param name="most">How many to name.</param>
    /// <param name="count">How many there are; null where all are given.</param>
    public static string List(IReadOnlyList<string> paths, int most = 3, int? count = null)
    {
        ArgumentNullException.ThrowIfNull(paths);
        var shown = string.Join(", ", paths.Take(most).Select(Name));
        var more = (count ?? paths.Count) - Math.Min(most, paths.Count);
        return more > 0 ? $"{shown} and {NumberWords.Count(more)} more" : shown;
    }

    /// <summary>A kind in words, small first letter: <c>exhaust gasket</c>.</summary>
    /// <param name="title">Its title, or null in what was stored before titles were kept: then its name is used.</param>
    /// <param name="kind">Its name.</param>
    public static string Kind(string? title, string kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return FirstLetter.Small(string.IsNullOrEmpty(title) ? kind.Replace('-', ' ') : title);
    }

    /// <summary>A kind as many: <c>exhaust gaskets</c>; the word before "of" takes the s.</summary>
    /// <param name="kind">The kind in words.</param>
    public static string Plural(string kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        var of = kind.IndexOf(" of ", StringComparison.Ordinal);
        var (head, tail) = of < 0 ? (kind, string.Empty) : (kind[..of], kind[of..]);
        return (head.EndsWith('s') ? head : head + "s") + tail;
    }
}
