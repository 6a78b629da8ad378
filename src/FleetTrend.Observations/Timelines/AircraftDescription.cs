using FleetTrend.Observations.DataProblems;
using FleetTrend.Records;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Texts;

namespace FleetTrend.Observations.Timelines;

/// <summary>One aircraft as all its sources together describe it.</summary>
/// <remarks>
/// Several sources: assignments are united by date, and where two differ on one day the source first by name holds. Records
/// are complete from the latest watch start (complete from all), and the earliest retirement counts. What differs is listed.
/// </remarks>
internal sealed class AircraftDescription
{
    private readonly LayoutIndex layouts;

    private AircraftDescription(string registration, LayoutIndex layouts, List<Recorded<Airframe>> sources, DateOnly asOf)
    {
        this.layouts = layouts;
        Registration = registration;
        MeterOffset = sources[0].Content.MeterOffset;
        WatchStartDate = sources.Max(s => s.Content.WatchStartDate);
        var retired = sources.Min(s => s.Content.RetiredDate);
        RetiredDate = retired <= asOf ? retired : null;
        Keys = [.. sources.Select(s => s.Key)];
        Assignments =
        [
            .. sources.SelectMany(s => s.Content.Assignments)
                .GroupBy(a => a.FromDate)
                .OrderBy(g => g.Key)
                .Select(g => g.First()),
        ];
    }

    public string Registration { get; }

    public DateOnly WatchStartDate { get; }

    public Hours MeterOffset { get; }

    /// <summary>The records that describe it.</summary>
    public IReadOnlyList<RecordKey> Keys { get; }

    /// <summary>The day it left the fleet, not after the as-of day; null while it flies.</summary>
    public DateOnly? RetiredDate { get; }

    public IReadOnlyList<Assignment> Assignments { get; }

    public static AircraftDescription Unite(AircraftHistory history, LayoutIndex layouts, DateOnly asOf, List<DataProblem> problems)
    {
        var sources = history.Airframes.OrderBy(a => a.Key, RecordKeyOrder.Instance).ToList();
        if (sources.Count == 0)
            throw new ArgumentException($"The history of {history.Registration} has no airframe.", nameof(history));
        var aircraft = new AircraftDescription(history.Registration, layouts, sources, asOf);
        aircraft.ListDisagreements(sources, problems);
        return aircraft;
    }

    /// <summary>Base and type group on a day; before the first assignment, the first.</summary>
    public Assignment On(DateOnly date) => On(Assignments, date);

    /// <summary>Kind of the location on a day, or null where the layout of that day does not have it.</summary>
    public LocationKind? Kind(string location, DateOnly date) => layouts.Kind(On(date).TypeGroup, location);

    /// <summary>The layout of the type group on a day: each location with its kind, in no order.</summary>
    public IEnumerable<(string Path, LocationKind Kind)> Layout(DateOnly date) => layouts.Locations(On(date).TypeGroup);

    /// <summary>Whether the layout of the type group has the location.</summary>
    public bool Has(string typeGroup, string location) => layouts.Kind(typeGroup, location) is not null;

    private static Assignment On(IReadOnlyList<Assignment> assignments, DateOnly date)
    {
        var last = assignments.Count - 1;
        while (last > 0 && assignments[last].FromDate > date)
            last--;
        return assignments[last];
    }

    private void ListDisagreements(List<Recorded<Airframe>> sources, List<DataProblem> problems)
    {
        if (sources.Count < 2)
            return;
        Compare("the start of complete records", s => s.WatchStartDate.ToString("O"));
        Compare("the meter offset", s => s.MeterOffset.ToString());
        Compare("the day it left the fleet", s => s.RetiredDate?.ToString("O") ?? "none");
        var differing = Assignments.FirstOrDefault(a => sources.Select(s => AssignedTo(s.Content, a.FromDate)).Distinct(StringComparer.Ordinal).Skip(1).Any());
        if (differing is not null)
            Compare($"base and type group on {differing.FromDate:O}", s => AssignedTo(s, differing.FromDate));

        void Compare(string what, Func<Airframe, string> value)
        {
            if (sources.Select(s => value(s.Content)).Distinct(StringComparer.Ordinal).Skip(1).Any())
            {
                var told = string.Join(", ", sources.Select(s => $"{s.Key.Source} says {value(s.Content)}"));
                problems.Add(new DataProblem(
                    DataProblemKind.SourcesDisagree, Registration, WatchStartDate, $"Sources disagree about {what}: {told}.", [.. sources.Select(s => s.Key)])
                {
                    Aspect = what,
                    Subject = [],
                });
            }
        }
    }

    private static string AssignedTo(Airframe airframe, DateOnly date)
    {
        var at = On(airframe.Assignments, date);
        return $"{ForeignText.Identifier(at.Base)} / {at.TypeGroup}";
    }
}
