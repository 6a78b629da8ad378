namespace FleetTrend.Cli.SendTest;

/// <summary>How a check came out.</summary>
internal enum Verdict
{
    /// <summary>As it should be.</summary>
    Passed,

    /// <summary>It works, and something should be looked at.</summary>
    Warned,

    /// <summary>Records cannot be sent so.</summary>
    Failed,
}
