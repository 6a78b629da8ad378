using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Timelines;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Texts;

namespace FleetTrend.Observations.Lives;

/// <summary>Follows parts with serial numbers from place to place and from aircraft to aircraft (rule 11).</summary>
/// <remarks>
/// An installation that does not tell the hours on its part takes them from the day the part last came out. A serial number
/// is told apart by the kind of location. What does not carry over is listed, and the hours recorded are kept.
/// </remarks>
internal sealed class SerialNumbers
{
    private static readonly Hours Tolerance = Hours.FromTenths(1);

    private readonly Dictionary<(string Registration, string Location), Part> inPlace = [];
    private readonly Dictionary<(string Kind, string Serial), (string Registration, string Location)> whereabouts = [];
    private readonly Dictionary<(string Kind, string Serial), (Hours? Age, RecordKey Key)> takenOut = [];
    private readonly Dictionary<RecordKey, CarriedHours> carried = [];

    private SerialNumbers()
    {
    }

    /// <summary>Hours that installations take over, by the key of the installation; conflicts are listed with their aircraft.</summary>
    public static IReadOnlyDictionary<RecordKey, CarriedHours> Carry(IReadOnlyList<(AircraftRecords Records, AircraftHours Hours)> fleet)
    {
        var following = new SerialNumbers();
        var moves = fleet.SelectMany(f => Moves(f.Records, f.Hours))
            .OrderBy(m => m.Date).ThenBy(m => m.Step).ThenBy(m => m.Key, RecordKeyOrder.Instance);
        foreach (var move in moves)
        {
            if (move.Step == Step.Installation)
                following.Install(move);
            else
                following.TakeOut(move);
        }

        return following.carried;
    }

    private static IEnumerable<Move> Moves(AircraftRecords records, AircraftHours hours)
    {
        var installed = records.Installations.Select(i => (i.Content.Location, i.Content.InstallationDate)).ToHashSet();
        var removals = records.Removals.Select(r => new Move(
            records, Step.Removal, r.Content.RemovalDate, r.Content.Location, hours.OfVisit(r.Content.RemovalDate), r.Content.SerialNumber, null, r.Key));
        var replacements = records.Actions
            .Where(a => ActionEffect.Renews(a.Content.Kind) && !installed.Contains((a.Content.Location, a.Content.ActionDate)))
            .Select(a => new Move(records, Step.Replacement, a.Content.ActionDate, a.Content.Location, hours.OfVisit(a.Content.ActionDate), null, null, a.Key));
        var installations = records.Installations.Select(i => new Move(
            records, Step.Installation, i.Content.InstallationDate, i.Content.Location,
                hours.OfVisit(i.Content.InstallationDate), i.Content.SerialNumber, i.Content.PartHours, i.Key));
        return removals.Concat(replacements).Concat(installations);
    }

    private void TakeOut(Move move)
    {
        inPlace.Remove(move.At, out var part);
        var serial = move.Serial ?? part?.Serial;
        if (serial is null)
            return;
        var isThatPart = part is not null && (part.Serial is null || part.Serial == serial);
        if (isThatPart || !whereabouts.ContainsKey((move.Kind, serial)))
            takenOut[(move.Kind, serial)] = (isThatPart ? part!.AgeAt(move.Hours) : null, move.Key);
        if (part?.Serial is { } installed)
            whereabouts.Remove((move.Kind, installed));
    }

    private void Install(Move move)
    {
        if (inPlace.TryGetValue(move.At, out var before) && before.Serial is not null && before.Serial != move.Serial)
            TakeOut(move with { Serial = null });
        var age = move.PartHours;
        if (move.Serial is { } serial)
        {
            age = AgeOf(move, (move.Kind, serial));
            whereabouts[(move.Kind, serial)] = move.At;
        }

        inPlace[move.At] = new Part(move.Serial, age, move.Hours);
    }

    private Hours? AgeOf(Move move, (string Kind, string Serial) part)
    {
        if (whereabouts.TryGetValue(part, out var elsewhere) && elsewhere != move.At)
        {
            Conflict(move, $"is still recorded at {elsewhere.Registration} {elsewhere.Location}", [move.Key], elsewhere.Registration);
            return move.PartHours;
        }

        if (!takenOut.TryGetValue(part, out var last) || last.Age is not { } age)
            return move.PartHours;
        if (move.PartHours is not { } told)
        {
            carried[move.Key] = new CarriedHours(age, last.Key);
            return age;
        }

        if (told - age > Tolerance || age - told > Tolerance)
            Conflict(move, $"came out with {age} h but is recorded as installed with {told} h, which is used", [move.Key, last.Key]);
        return told;
    }

    private static void Conflict(Move move, string what, IReadOnlyList<RecordKey> keys, string? elsewhere = null) =>
        move.Records.Problems.Add(new DataProblem(
            DataProblemKind.SerialNumberConflict,
            move.Records.Description.Registration,
            move.Date,
            $"Serial number {ForeignText.Identifier(move.Serial ?? "")}, installed at {move.Location} on {move.Date:O}, {what}.",
            keys)
        {
            OtherRegistration = elsewhere == move.Records.Description.Registration ? null : elsewhere,
            Subject = [move.Key],
        });

    private enum Step
    {
        Removal,
        Replacement,
        Installation,
    }

    private sealed record Part(string? Serial, Hours? StartAge, Hours StartHours)
    {
        public Hours? AgeAt(Hours hours) => StartAge is { } age && hours >= StartHours ? age + (hours - StartHours) : StartAge;
    }

    private sealed record Move(
        AircraftRecords Records, Step Step, DateOnly Date, string Location, Hours Hours, string? Serial, Hours? PartHours, RecordKey Key)
    {
        public (string Registration, string Location) At => (Records.Description.Registration, Location);

        public string Kind => Records.Description.Kind(Location, Date)!.Name;
    }
}
