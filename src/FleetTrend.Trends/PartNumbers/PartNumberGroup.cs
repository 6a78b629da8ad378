using FleetTrend.Observations.Lives;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.PartNumbers;

/// <summary>Lives of one part number.</summary>
internal sealed record PartNumberGroup
{
    public PartNumberGroup(string partNumber, IReadOnlyList<ObservedLife> observed)
    {
        PartNumber = partNumber;
        Observed = observed.Count;
        Fitted = FittedLives.From(observed);
        ByAircraft = observed.Where(l => l.Exclusion is null).GroupBy(l => l.Registration, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => FittedLives.From(g).Lives, StringComparer.Ordinal);
    }

    /// <summary>The part number.</summary>
    public string PartNumber { get; }

    /// <summary>All lives of it.</summary>
    public int Observed { get; }

    /// <summary>Those that take part in a fit.</summary>
    public FittedLives Fitted { get; }

    /// <summary>The same by aircraft.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<Life>> ByAircraft { get; }
}
