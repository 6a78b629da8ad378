namespace FleetTrend.Cli.SendTest;

/// <summary>One thing looked at.</summary>
/// <param name="Name">What.</param>
/// <param name="Verdict">How it came out.</param>
/// <param name="Found">What was found.</param>
/// <param name="Advice">What to do; empty where nothing is.</param>
internal sealed record Check(string Name, Verdict Verdict, string Found, string Advice = "")
{
    /// <summary>As it should be.</summary>
    public static Check Passed(string name, string found) => new(name, Verdict.Passed, found);

    /// <summary>Not as it should be.</summary>
    public static Check Failed(string name, string found, string advice) => new(name, Verdict.Failed, found, advice);
}
