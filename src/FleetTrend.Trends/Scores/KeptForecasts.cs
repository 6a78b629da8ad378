using System.Text.Json;
using FleetTrend.Trends.DueLooks;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Fleet;
using FleetTrend.Trends.Spares;

namespace FleetTrend.Trends.Scores;

/// <summary>
/// Forecasts of a type group as they were published, the first of each quarter and analysis: what the score is kept by. Nothing of them is computed again.
/// </summary>
public sealed record KeptForecasts
{
    /// <summary>The names under which forecasts are kept.</summary>
    public static IReadOnlyList<string> Names { get; } = [Analyses.FailureChances.Name, Analyses.Spares.Name, Analyses.DueLooks.Name];

    /// <summary>None yet.</summary>
    public static KeptForecasts None { get; } = new();

    /// <summary>Life distributions behind the chances before the next look, earliest first.</summary>
    public IReadOnlyList<Kept<LifeLaw>> Laws { get; init; } = [];

    /// <summary>Spares by base, earliest first.</summary>
    public IReadOnlyList<Kept<KeptBase>> Spares { get; init; } = [];

    /// <summary>Days named for looks, earliest first.</summary>
    public IReadOnlyList<Kept<KeptDue>> DueLooks { get; init; } = [];

    /// <summary>Reads what was kept.</summary>
    /// <param name="rows">Name, moment and text of each, in any order.</param>
    /// <exception cref="JsonException">A text is none that <see cref="Write"/> wrote.</exception>
    public static KeptForecasts Read(IReadOnlyList<(string Name, DateTimeOffset AsOf, string Detail)> rows)
    {
        return new KeptForecasts
        {
            Laws = Of<LifeLaw>(Analyses.FailureChances.Name),
            Spares = Of<KeptBase>(Analyses.Spares.Name),
            DueLooks = Of<KeptDue>(Analyses.DueLooks.Name),
        };

        IReadOnlyList<Kept<T>> Of<T>(string name) =>
        [
            .. rows.Where(r => r.Name == name).OrderBy(r => r.AsOf)
                .Select(r => new Kept<T>(r.AsOf, JsonSerializer.Deserialize<List<T>>(r.Detail, TrendJson.Options) ?? throw new JsonException("There is no forecast."))),
        ];
    }

    /// <summary>The forecasts of a type group as they are kept: name and text; what forecasts nothing is left out.</summary>
    /// <param name="fleet">Its aircraft.</param>
    /// <param name="calibrations">What was published of its chances.</param>
    /// <param name="spares">What was published of its spares.</param>
    /// <param name="looks">Which looks were published as due.</param>
    public static IEnumerable<(string Name, string Detail)> Write(
        IEnumerable<FleetLine> fleet, IEnumerable<ChanceCalibration> calibrations, IEnumerable<SpareNeed> spares, IEnumerable<DueLook> looks)
    {
        List<LifeLaw> laws = [.. calibrations.SelectMany(c => c.Laws).Where(l => l.Estimate is not null)];
        if (laws.Count > 0)
            yield return (Analyses.FailureChances.Name, JsonSerializer.Serialize(laws, TrendJson.Options));
        var marks = fleet.Where(l => l.RetiredDate is null).ToLookup(l => l.Base, l => l.Registration, StringComparer.Ordinal);
        List<KeptBase> bases =
        [
            .. spares.Where(s => s.Horizons.Count > 0).GroupBy(s => s.Base, StringComparer.Ordinal)
                .Select(b => new KeptBase(b.Key, [.. marks[b.Key]], [.. b.Select(KeptSpare.Of)])),
        ];
        if (bases.Count > 0)
            yield return (Analyses.Spares.Name, JsonSerializer.Serialize(bases, TrendJson.Options));
        List<KeptDue> dues = [.. looks.Select(KeptDue.Of).OfType<KeptDue>()];
        if (dues.Count > 0)
            yield return (Analyses.DueLooks.Name, JsonSerializer.Serialize(dues, TrendJson.Options));
    }
}
