namespace FleetTrend.Intake;

/// <summary>The right name that somebody may have meant who wrote a wrong one.</summary>
public static class NearestName
{
    private const int MostLength = 80;
    private const int MostOffered = 3;
    private const int LeastPart = 4;

    /// <summary>The names nearest to a wrong one, as in <c>ZZ-A01 or ZZ-A10</c>; null where none is near.</summary>
    /// <param name="given">What was written.</param>
    /// <param name="names">The right names.</param>
    public static string? Find(string given, IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(given);
        ArgumentNullException.ThrowIfNull(names);
        if (given.Length > MostLength)
            return null;
        var wrong = Letters(given);
        if (wrong.Length == 0)
            return null;
        var wrongNumber = WithoutZeros(wrong);
        var near = names.Distinct(StringComparer.Ordinal)
            .Select(name => (Name: name, Letters: Letters(name)))
            .Select(right => (right.Name, Distance: Least(Distance(wrong, right.Letters), Distance(wrongNumber, WithoutZeros(right.Letters)))))
            .Where(pair => pair.Distance is not null)
            .ToList();
        if (near.Count == 0)
            return null;
        var least = near.Min(pair => pair.Distance);
        return string.Join(" or ", near.Where(pair => pair.Distance == least).Select(pair => pair.Name)
            .Order(StringComparer.Ordinal).Take(MostOffered));
    }

    /// <summary>How far two names are apart; null where they are too far. A name that holds the other whole is farther than any that is
    /// near by its letters.</summary>
    private static double? Distance(string wrong, string right)
    {
        var changes = Changes(wrong, right);
        if (changes <= Math.Max(1, Math.Min(wrong.Length, right.Length) / 4))
            return changes;
        return wrong.Length >= LeastPart && right.Contains(wrong, StringComparison.Ordinal)
            || right.Length >= LeastPart && wrong.Contains(right, StringComparison.Ordinal)
                ? 1_000 + Math.Abs(right.Length - wrong.Length)
                : null;
    }

    private static double? Least(double? one, double? other) => one is null ? other : other is null ? one : Math.Min(one.Value, other.Value);

    /// <summary>Letters and digits in lower case: neither case nor hyphens make another name.</summary>
    private static string Letters(string name) => string.Concat(name.Where(char.IsAsciiLetterOrDigit).Select(char.ToLowerInvariant));

    /// <summary>Nor do zeros before a number.</summary>
    private static string WithoutZeros(string name)
    {
        var letters = name.ToList();
        for (var i = letters.Count - 2; i >= 0; i--)
        {
            if (letters[i] == '0' && char.IsAsciiDigit(letters[i + 1]) && (i == 0 || !char.IsAsciiDigit(letters[i - 1])))
                letters.RemoveAt(i);
        }

        return string.Concat(letters);
    }

    /// <summary>Letters put in, left out, changed, or swapped with their neighbour (optimal string alignment); a letter taken for a digit that
    /// looks like it counts half.</summary>
    private static double Changes(string a, string b)
    {
        var table = new double[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            table[i, 0] = i;
        for (var j = 0; j <= b.Length; j++)
            table[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                table[i, j] = Math.Min(table[i - 1, j - 1] + Change(a[i - 1], b[j - 1]), Math.Min(table[i - 1, j], table[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    table[i, j] = Math.Min(table[i, j], table[i - 2, j - 2] + 1);
            }
        }

        return table[a.Length, b.Length];
    }

    private static double Change(char a, char b) => a == b ? 0 : LookAlike(a) == LookAlike(b) ? 0.5 : 1;

    private static char LookAlike(char letter) => letter switch
    {
        'o' => '0',
        'i' or 'l' => '1',
        's' => '5',
        'b' => '8',
        _ => letter,
    };
}
