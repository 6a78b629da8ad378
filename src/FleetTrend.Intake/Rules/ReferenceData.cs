using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Intake.Rules;

/// <summary>What the rules need to know beside the record itself: read once for a batch, and growing with the aircraft in it.</summary>
internal sealed class ReferenceData
{
    private readonly Dictionary<string, string> bases = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, List<IReadOnlyDictionary<string, Location>>> locations = new(StringComparer.Ordinal);

    /// <summary>The day today (UTC).</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The source that whoever pushes may push for; null where that is settled elsewhere.</summary>
    public string? OwnSource { get; init; }

    /// <summary>Names of registered sources.</summary>
    public required IReadOnlySet<string> Sources { get; init; }

    /// <summary>Locations by path of each registered type group.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyDictionary<string, Location>> TypeGroups { get; init; }

    /// <summary>What those codes of the sources mean that stand in the batch and have a meaning.</summary>
    public IReadOnlyDictionary<SourceCode, CodeMeaning> Codes { get; init; } = new Dictionary<SourceCode, CodeMeaning>();

    /// <summary>Makes a base known by its spelling.</summary>
    public void AddBase(string spelling) => bases.TryAdd(spelling, spelling);

    /// <summary>Bases of known aircraft.</summary>
    public IReadOnlyCollection<string> Bases => bases.Values;

    /// <summary>How a base is spelled already, whatever its case here; null where it is new.</summary>
    public string? SpellingOf(string atBase) => bases.GetValueOrDefault(atBase);

    /// <summary>Makes an aircraft known, or adds to what is known of it.</summary>
    public void Add(string registration, IReadOnlyDictionary<string, Location> locations)
    {
        if (!this.locations.TryGetValue(registration, out var all))
            this.locations[registration] = all = [];
        all.Add(locations);
    }

    /// <summary>An aircraft that stands earlier in the batch counts as registered for what follows.</summary>
    public void Add(Airframe airframe)
    {
        foreach (var group in airframe.Assignments.Select(a => a.TypeGroup).Distinct(StringComparer.Ordinal))
            Add(airframe.Registration, TypeGroups[group]);
        foreach (var assignment in airframe.Assignments)
            AddBase(assignment.Base);
    }

    /// <summary>Paths of the locations of an aircraft.</summary>
    public IEnumerable<string> PathsOf(string registration) =>
        this.locations.GetValueOrDefault(registration)?.SelectMany(locations => locations.Keys) ?? [];

    public bool HasAircraft(string registration) => locations.ContainsKey(registration);

    /// <summary>The location of that path in any layout that the aircraft's type groups have, or null.</summary>
    public Location? FindLocation(string registration, string path) =>
        locations.GetValueOrDefault(registration)?.Select(l => l.GetValueOrDefault(path)).FirstOrDefault(l => l is not null);
}
