namespace FleetTrend.Store.Keys;

/// <summary>What a key allows. None implies another. The numbers are those of the contract.</summary>
public enum KeyScope
{
    /// <summary>Push records of the key's own source, and see them.</summary>
    RecordsWrite = 1,

    /// <summary>Read trends, the rows behind them, flags and reports.</summary>
    TrendsRead = 2,

    /// <summary>Keys, sources, layouts, type groups, recipients, answers to flags.</summary>
    Administer = 3,
}
