namespace FleetTrend.Reports.Words;

/// <summary>p-values and q-values in plain words.</summary>
public static class ChanceWords
{
    /// <summary>A q-value: <c>Of calls as strong as this, about 1 in 50 would be chance (q = 0.020)</c>.</summary>
    public static string OfQ(double q) =>
        $"Of calls as strong as this, {About(q)} would be chance ({Named("q", q)}).";

    /// <summary>A one-sided p-value about a count: <c>Were it like the others, so many or more would come with chance 1 in 900 (p = 0.0011)</c>.</summary>
    public static string OfP(double p) =>
        $"Were it like the others, so many or more would come with chance {NumberWords.OneIn(p)} ({Named("p", p)}).";

    /// <summary>A p-value or a q-value in brief: <c>q = 0.020</c>.</summary>
    public static string Named(string name, double value) =>
        value < 0.0001 ? $"{name} below 0.0001" : $"{name} = {NumberWords.Rounded(value)}";

    private static string About(double q)
    {
        var odds = NumberWords.OneIn(q);
        return odds.StartsWith("1 in", StringComparison.Ordinal) ? "about " + odds : odds;
    }
}
