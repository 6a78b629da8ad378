namespace FleetTrend.Trends.Spares;

/// <summary>The days on which parts went in, by kind, part number and the base where the aircraft was then.</summary>
internal sealed class SpareUse
{
    private readonly ILookup<(string Kind, string Base, string? PartNumber), DateOnly> days;

    private SpareUse(ILookup<(string Kind, string Base, string? PartNumber), DateOnly> days) => this.days = days;

    /// <summary>Those of a type group.</summary>
    public static SpareUse Count(TypeGroupInputs inputs) => new(inputs.Aircraft.SelectMany(a => a.Lives)
        .Where(l => l.HasStart && l.TypeGroup == inputs.TypeGroup)
        .ToLookup(l => (l.Kind.Name, l.Base, l.PartNumber), l => l.StartDate));

    /// <summary>How many went in after a day.</summary>
    public int Since(SparePlace place, DateOnly day) => days[(place.Kind, place.Base, place.PartNumber)].Count(d => d > day);
}
