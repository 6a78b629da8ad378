using FleetTrend.Cli.RecordFiles;
using FleetTrend.Contracts.V1;

namespace FleetTrend.Cli.Import;

/// <summary>
/// Inspections that say <c>examined: all</c>: a look that examined is added for each location of the aircraft's layout that
/// the lines of looks do not name. Layouts come from the server, the aircraft from the same folder.
/// </summary>
internal sealed class FullWorksheets(Registration registration)
{
    private readonly Dictionary<string, Aircraft> aircraft = new(StringComparer.OrdinalIgnoreCase);
    private Dictionary<string, IReadOnlyList<string>>? locations;

    /// <summary>Remembers an aircraft, so that its inspections can be completed.</summary>
    public void Remember(Aircraft one) => aircraft[one.Registration] = one;

    /// <summary>Adds the looks that the row stands for; null, or why it cannot be done.</summary>
    public async Task<Fault?> CompleteAsync(FileRecord record, CancellationToken ct)
    {
        var examined = record.Row.Line.Text(FileSet.Examined);
        if (examined.Length == 0)
            return null;
        Fault Unreadable(string why) => new(record.Row, FileSet.Examined, Fault.CellNotReadable, why);
        var inspection = ((Record)record.Message).Inspection;
        if (examined != "all")
            return Unreadable(Fault.Words("must be all, or empty", examined));
        if (inspection.Looks.Any(l => l.LocationCode.Length > 0))
            return Unreadable(Fault.Words("must be empty where lines of looks.csv name their location by a code: it is not known here which location that is", examined));
        if (!aircraft.TryGetValue(inspection.Registration, out var one) || one.Assignments.Count == 0)
            return Unreadable(Fault.Words("must be empty where the aircraft, with its assignments, is not in the same folder", examined));
        var group = (one.Assignments.LastOrDefault(a => IsBy(a.FromDate, inspection.InspectionDate)) ?? one.Assignments[0]).TypeGroup;
        locations ??= await LocationsAsync(ct);
        if (!locations.TryGetValue(group, out var all))
            return Unreadable(Fault.Words($"must be empty where the type group of the aircraft, '{group}', is not registered", examined));
        var named = inspection.Looks.Select(l => l.Location).ToHashSet(StringComparer.Ordinal);
        inspection.Looks.AddRange(all.Where(l => !named.Contains(l)).Select(l => new LocationLook { Location = l, State = LookState.Examined }));
        return null;
    }

    private async Task<Dictionary<string, IReadOnlyList<string>>> LocationsAsync(CancellationToken ct)
    {
        var layouts = (await registration.LayoutsAsync(ct)).ToDictionary(l => l.Name, StringComparer.Ordinal);
        return (await registration.TypeGroupsAsync(ct)).ToDictionary(
            g => g.Name, IReadOnlyList<string> (g) => [.. layouts[g.Layout].Locations.Select(l => l.Path)], StringComparer.Ordinal);
    }

    private static bool IsBy(Google.Type.Date? from, Google.Type.Date? day) =>
        from is not null && day is not null && (from.Year, from.Month, from.Day).CompareTo((day.Year, day.Month, day.Day)) <= 0;
}
