namespace FleetTrend.Reports.Words;

/// <summary>p-values and q-values in plain words.</summary>
public static class ChanceWords
{
    /// <summary>A q-value: <c>Of calls as strong as this, about 1 in 50 would be chance (q = 0.020)</c>.</summary>
    public static string OfQ(double q) =>
        $"Of calls as strong as this, {About(q)} would be chance ({Named("q", q)}).";

    /// <summary>A one-sided p-value about an aircraft's count.</summary>
    public static string OfP(double p) =>
        $"An aircraft like the others would show this many or more with chance {NumberWords.OneIn(p)} ({Named("p", p)}).";

    private static string Named(string name, double value) =>
        value < 0.0001 ? $"{name} below 0.0001" : $"{name} = {NumberWords.Rounded(value)}";

    private static string About(double q)
    {
        var odds = NumberWords.OneIn(q);
        return odds.StartsWith("1 in", StringComparison.Ordinal) ? "about " + odds : odds;
    }
}
