using FleetTrend.Intake.Codes;
using FleetTrend.Intake.HeldRecords;
using FleetTrend.Intake.Rules;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;
using FleetTrend.Store.Codes;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Layouts;
using FleetTrend.Store.Sources;
using Google.Protobuf;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake;

/// <summary>The one way in: pushed records are checked, stored together, and each gets its outcome.</summary>
public sealed class RecordIntake(
    RecordWriter writer,
    AcceptedRecords accepted,
    FleetDirectory fleet,
    FleetNames names,
    LayoutStore layouts,
    SourceStore sources,
    CodeStore codes,
    ReleaseSignal release,
    TimeProvider clock)
{
    /// <summary>Most records of one call.</summary>
    public const int MaxRecords = 1_000;

    /// <summary>Most bytes of one record: several times what the rules of its fields leave room for.</summary>
    public const int MaxRecordBytes = 256 * 1024;

    private static readonly MessageParser<Wire.Record> KnownFields = Wire.Record.Parser.WithDiscardUnknownFields(true);
    private static readonly Dictionary<SourceCode, CodeMeaning> NoCodes = [];

    private readonly RecentAircraft recent = new(fleet, clock);

    // Neither a source nor a type group ever goes away or changes its layout: what was seen once stays true.
    private volatile IReadOnlySet<string> sourceNames = new HashSet<string>(StringComparer.Ordinal);
    private volatile Dictionary<string, IReadOnlyDictionary<string, Location>> typeGroups = new(StringComparer.Ordinal);

    /// <summary>Pushes records as if one after the other, in one transaction. A refused one stops and undoes no other.</summary>
    /// <param name="records">Up to <see cref="MaxRecords"/>.</param>
    /// <param name="terms">For whom, and how.</param>
    /// <param name="ct">Cancels; then nothing of the call may count on being stored.</param>
    /// <returns>An outcome per record, in the order given. What is accepted is durable.</returns>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="MaxRecords"/> records.</exception>
    public async Task<IReadOnlyList<Wire.RecordOutcome>> PushAsync(
        IReadOnlyList<Wire.Record> records, PushTerms terms, CancellationToken ct) =>
        await StoreAsync(await ParseAsync(records, terms, ct), ct);

    /// <summary>The first half of <see cref="PushAsync"/>: holds records against the rules and the fleet as it is stored now, and
    /// writes nothing. A stream parses what comes next while the records before it are being stored.</summary>
    /// <param name="records">Up to <see cref="MaxRecords"/>.</param>
    /// <param name="terms">For whom, and how.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="MaxRecords"/> records.</exception>
    public Task<ParsedRecords> ParseAsync(
        IReadOnlyList<Wire.Record> records, PushTerms terms, CancellationToken ct) =>
        ParseAsync(records, terms, null, ct);

    /// <summary>The second half of <see cref="PushAsync"/>: stores what broke no rule, in one transaction.</summary>
    /// <param name="batch">What <see cref="ParseAsync(IReadOnlyList{Wire.Record}, PushTerms, CancellationToken)"/> gave; used once.</param>
    /// <param name="ct">Cancels; then nothing of it may count on being stored.</param>
    /// <returns>An outcome per record, in the order given. What is accepted is durable.</returns>
    public async Task<IReadOnlyList<Wire.RecordOutcome>> StoreAsync(ParsedRecords batch, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(batch);
        if (batch.Good.Count == 0)
            return batch.Outcomes;
        var results = await writer.SaveAsync([.. batch.Good.Select(g => g.Record)], ct);
        var releases = false;
        var changesAircraft = false;
        foreach (var ((place, record), result) in batch.Good.Zip(results))
        {
            batch.Outcomes[place] = Outcomes.Create(batch.Records[place], result, batch.Waiting.GetValueOrDefault(place));
            changesAircraft |= result is SaveResult.Accepted && record is NewRecord.ToStore { Content: Airframe or Retraction };

            // A newly held record too: what it waits for may have come by another process just now.
            releases |= result is SaveResult.Held { IsNew: true } || (result is SaveResult.Accepted && record is NewRecord.ToStore { Content: Airframe });
        }

        if (changesAircraft)
            recent.Forget();
        if (releases)
            release.Set();
        return batch.Outcomes;
    }

    /// <summary>Says what <see cref="PushAsync"/> would say, with "valid" in place of "accepted", and writes nothing.</summary>
    /// <param name="records">Up to <see cref="MaxRecords"/>.</param>
    /// <param name="terms">For whom, and how.</param>
    /// <param name="aircraft">What was checked before and counts as registered; valid aircraft of this call are added.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>An outcome per record, in the order given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="MaxRecords"/> records.</exception>
    public async Task<IReadOnlyList<Wire.RecordOutcome>> CheckAsync(
        IReadOnlyList<Wire.Record> records, PushTerms terms, CheckedAircraft aircraft, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        var registered = aircraft.Airframes.Select(a => a.Registration).ToHashSet(StringComparer.Ordinal);
        var batch = await ParseAsync(records, terms, aircraft, ct);
        var results = await writer.CheckAsync([.. batch.Good.Select(g => g.Record)], registered, ct);
        foreach (var ((place, record), result) in batch.Good.Zip(results))
        {
            batch.Outcomes[place] = Outcomes.Checked(records[place], result, batch.Waiting.GetValueOrDefault(place));
            if (result is SaveResult.Accepted && record is NewRecord.ToStore { Content: Airframe airframe })
                aircraft.Add(airframe);
        }

        return batch.Outcomes;
    }

    /// <summary>Holds records against the rules; those that break one have their outcome then.</summary>
    private async Task<ParsedRecords> ParseAsync(
        IReadOnlyList<Wire.Record> records, PushTerms terms, CheckedAircraft? aircraft, CancellationToken ct)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(records.Count, MaxRecords, nameof(records));
        var parsed = Parse(records, terms, await ReadKnownAsync(records, terms, aircraft, anew: false, ct));

        // Another process may have given the aircraft another layout a moment ago.
        if (parsed.Refused.Select(r => r.Record).Concat(parsed.Waiting.Values).Any(r => r.Refusals.Any(x => x.Reason == Reasons.LocationNotInLayout)))
            parsed = Parse(records, terms, await ReadKnownAsync(records, terms, aircraft, anew: true, ct));
        await SuggestAsync(parsed.Refused, parsed.Waiting, ct);
        var outcomes = new Wire.RecordOutcome[records.Count];
        await RefuseAsync(records, parsed.Refused, outcomes, ct);
        return new ParsedRecords(records, parsed.Good, parsed.Waiting.ToDictionary(pair => pair.Key, pair => pair.Value.Refusals), outcomes);
    }

    private static (
        List<(int Index, NewRecord Record)> Good,
        List<(int Index, ParsedRecord Record)> Refused,
        Dictionary<int, ParsedRecord> Waiting) Parse(IReadOnlyList<Wire.Record> records, PushTerms terms, ReferenceData known)
    {
        var good = new List<(int Index, NewRecord Record)>(records.Count);
        var refused = new List<(int Index, ParsedRecord Record)>();
        var waiting = new Dictionary<int, ParsedRecord>();
        for (var i = 0; i < records.Count; i++)
        {
            var parsed = RecordRules.Parse(records[i], known);
            if (parsed.Content is null && Waits(records[i], parsed, terms))
            {
                good.Add((i, new NewRecord.ToHold(parsed.Key, Held(records[i]), ContentHash.Compute(records[i]))));
                waiting.Add(i, parsed);
            }
            else if (parsed.Content is null)
            {
                refused.Add((i, parsed));
            }
            else
            {
                good.Add((i, new NewRecord.ToStore(parsed.Key, parsed.Content, ContentHash.Compute(records[i]))));
            }

            if (parsed.Content is Airframe airframe)
                known.Add(airframe);
        }

        return (good, refused, waiting);
    }

    private async Task SuggestAsync(
        List<(int Index, ParsedRecord Record)> refused, Dictionary<int, ParsedRecord> waiting, CancellationToken ct)
    {
        var suggestions = new Suggestions(names, codes);
        for (var i = 0; i < refused.Count; i++)
            refused[i] = (refused[i].Index, await suggestions.AddAsync(refused[i].Record, ct));
        foreach (var (place, record) in waiting.ToList())
            waiting[place] = await suggestions.AddAsync(record, ct);
    }

    /// <summary>True where nothing is wrong with a record but that something it refers to is not there yet. What belongs to no aircraft waits for
    /// nothing: what waits is released by its aircraft.</summary>
    private static bool Waits(Wire.Record sent, ParsedRecord record, PushTerms terms) => !IsOfFleet(sent) && record.Refusals.All(refusal =>
        refusal.Reason == Reasons.CodeNotMapped
        || (terms.Missing == MissingPlace.Hold
            && (refusal.Reason == Reasons.AircraftNotRegistered || refusal.Reason == Reasons.LocationNotInLayout)));

    private static HeldContent Held(Wire.Record record) =>
        new(RegistrationOf(record).ToUpperInvariant(), KnownFields.ParseFrom(record.ToByteString()).ToByteArray(), [.. RecordCodes.Read(record)]);

    /// <summary>Refuses, unless the very same record was accepted or held while the aircraft was still described in another way: then it
    /// answers as it did the first time.</summary>
    private async Task RefuseAsync(
        IReadOnlyList<Wire.Record> records, List<(int Index, ParsedRecord Record)> refused, Wire.RecordOutcome[] outcomes, CancellationToken ct)
    {
        // What breaks no rule of its own, and only does not fit what is stored now, may have fitted, or waited, before.
        var perhaps = refused.Where(r => r.Record.Refusals.All(x => DependsOnOthers(x.Reason))).ToList();
        var before = perhaps.Count == 0
            ? []
            : await accepted.FindAsync([.. perhaps.Select(r => (r.Record.Key, ContentHash.Compute(records[r.Index])))], ct);
        foreach (var ((place, record), result) in perhaps.Zip(before))
        {
            if (result is not null)
                outcomes[place] = Outcomes.Create(records[place], result, record.Refusals);
        }

        foreach (var (place, record) in refused)
            outcomes[place] ??= Outcomes.Refused(records[place], record.Refusals);
    }

    private static bool DependsOnOthers(Reason reason) =>
        reason.Code == Google.Rpc.Code.FailedPrecondition
        || reason == Reasons.ConditionNotAtKind || reason == Reasons.FieldNotAllowed || reason == Reasons.DuplicateLine; // as codes are read

    private async Task<ReferenceData> ReadKnownAsync(
        IReadOnlyList<Wire.Record> records, PushTerms terms, CheckedAircraft? counted, bool anew, CancellationToken ct)
    {
        if (records.Any(r => r.Key is { } key && !sourceNames.Contains(key.Source)))
            sourceNames = await sources.ReadNamesAsync(ct);
        var groups = records.Where(r => r.Aircraft is not null).SelectMany(r => r.Aircraft.Assignments).Select(a => a.TypeGroup);
        var hasPractices = records.Any(r => r.PracticeChange is not null); // rare; of a type group that came a moment ago, too
        if (hasPractices || groups.Any(g => !typeGroups.ContainsKey(g)))
        {
            var read = await layouts.ReadByTypeGroupAsync(ct);
            typeGroups = read.ToDictionary(
                pair => pair.Key,
                pair => (IReadOnlyDictionary<string, Location>)pair.Value.Locations.ToDictionary(l => l.Path, StringComparer.Ordinal),
                StringComparer.Ordinal);
        }

        SourceCode[] carried = [.. records.SelectMany(RecordCodes.Read).Distinct()];
        var known = new ReferenceData
        {
            Codes = carried.Length == 0 ? NoCodes : await codes.ReadAsync(carried, ct),
            Today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime),
            OwnSource = terms.OwnSource,
            Sources = sourceNames,
            TypeGroups = typeGroups,
        };
        if (records.Any(r => IsOfFleet(r) || r.Aircraft is not null))
        {
            // Without those of the records that are pushed here: all aircraft of a base, pushed together, may respell it.
            foreach (var name in await fleet.ReadBasesAsync(
                [.. records.Where(r => r.Aircraft is not null && r.Key is not null).Select(r => (r.Key.Source, r.Key.SourceRecordId))], ct))
            {
                known.AddBase(name);
            }
        }

        string[] registrations = [.. records.Select(RegistrationOf).Where(r => Patterns.Registration.IsMatch(r))
            .Select(r => r.ToUpperInvariant()).Distinct(StringComparer.Ordinal)];

        // What may wait must not depend on when it came: it is let in where any revision of the aircraft, an older one too, gave it the
        // location. Where the newest does not, it is listed as a data problem and takes part in no number, whichever came first.
        foreach (var aircraft in await recent.ReadAsync(registrations, anew, ct))
            known.Add(aircraft.Registration, terms.Missing == MissingPlace.Hold ? aircraft.LocationsEver : aircraft.Locations);
        foreach (var airframe in counted?.Airframes ?? [])
            known.Add(airframe);
        return known;
    }

    /// <summary>Whether a record belongs to no aircraft, and names a base.</summary>
    private static bool IsOfFleet(Wire.Record record) => record.PracticeChange is not null || record.StockCount is not null;

    private static string RegistrationOf(Wire.Record record) => record.ContentCase switch
    {
        Wire.Record.ContentOneofCase.MeterReading => record.MeterReading.Registration,
        Wire.Record.ContentOneofCase.MeterChange => record.MeterChange.Registration,
        Wire.Record.ContentOneofCase.Installation => record.Installation.Registration,
        Wire.Record.ContentOneofCase.Removal => record.Removal.Registration,
        Wire.Record.ContentOneofCase.Inspection => record.Inspection.Registration,
        Wire.Record.ContentOneofCase.Finding => record.Finding.Registration,
        Wire.Record.ContentOneofCase.Action => record.Action.Registration,
        Wire.Record.ContentOneofCase.None or Wire.Record.ContentOneofCase.Aircraft
            or Wire.Record.ContentOneofCase.PracticeChange or Wire.Record.ContentOneofCase.StockCount or Wire.Record.ContentOneofCase.Retraction => "",
    };
}
