namespace FleetTrend.Store.Keys;

/// <summary>What a key allows. None implies another. The numbers are those of the contract.</summary>
public enum KeyScope
{
    /// <summary>Push records of the key's own source, and see them.</summary>
    RecordsWrite = 1,

    /// <summary>Read trends, the rows behind them, flags and reports.</summary>
    TrendsRead = 2,

    /// <summary>Keys, sources, layouts, type groups, recipients, and what <see cref="Answer"/> allows.</summary>
    Administer = 3,

    /// <summary>Answer flags and data problems, merge findings, say what codes mean, see held records, change parameters.</summary>
    Answer = 4,
}
