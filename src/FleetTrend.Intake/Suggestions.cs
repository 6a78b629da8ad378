using FleetTrend.Intake.Rules;
using FleetTrend.Records.Sources;
using FleetTrend.Store.Codes;
using FleetTrend.Store.Fleet;

namespace FleetTrend.Intake;

/// <summary>Offers the nearest registered mark, or the nearest code that has a meaning, for one that is not known. It reads only where something
/// was refused or waits.</summary>
internal sealed class Suggestions(FleetNames names, CodeStore codes)
{
    private readonly Dictionary<(string Source, CodeKind Kind), IReadOnlyList<string>> knownCodes = [];
    private readonly Dictionary<string, string?> marks = new(StringComparer.Ordinal);
    private IReadOnlyList<string>? registered;

    /// <summary>The refusals of a record, those of unknown marks and codes with what is nearest.</summary>
    public async Task<ParsedRecord> AddAsync(ParsedRecord record, CancellationToken ct) =>
        record.Refusals.Any(IsOfName) ? record with { Refusals = await AddAsync(record.Key, record.Refusals, ct) } : record;

    private async Task<IReadOnlyList<Refusal>> AddAsync(RecordKey key, IReadOnlyList<Refusal> refusals, CancellationToken ct)
    {
        var added = new List<Refusal>(refusals.Count);
        foreach (var refusal in refusals)
        {
            added.Add(
                refusal.Reason == Reasons.AircraftNotRegistered ? refusal with { Nearest = await MarkAsync(refusal.Value, ct) }
                : refusal.Reason == Reasons.CodeNotMapped && Patterns.Source.IsMatch(key.Source)
                    ? refusal with { Nearest = await CodeAsync(key.Source, refusal, ct) }
                : refusal);
        }

        return added;
    }

    private async Task<string?> MarkAsync(string mark, CancellationToken ct)
    {
        if (marks.TryGetValue(mark, out var nearest))
            return nearest;
        registered ??= await names.ReadAsync(NameKind.Aircraft, ct);
        return marks[mark] = NearestName.Find(mark, registered);
    }

    private async Task<string?> CodeAsync(string source, Refusal refusal, CancellationToken ct)
    {
        var kind = refusal.Field.EndsWith("location_code", StringComparison.Ordinal) ? CodeKind.Location
            : refusal.Field.EndsWith("condition_code", StringComparison.Ordinal) ? CodeKind.Condition
            : CodeKind.Action;
        if (!knownCodes.TryGetValue((source, kind), out var known))
            knownCodes.Add((source, kind), known = await codes.ReadNamesAsync(source, kind, ct));
        return NearestName.Find(refusal.Value, known);
    }

    private static bool IsOfName(Refusal refusal) => refusal.Reason == Reasons.AircraftNotRegistered || refusal.Reason == Reasons.CodeNotMapped;
}
