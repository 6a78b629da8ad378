using FleetTrend.Store;
using FleetTrend.Store.HeldRecords;
using Google.Protobuf.WellKnownTypes;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.HeldRecords;

/// <summary>Records that wait: what they wait for, and their way in once it is there.</summary>
public sealed class HeldRecordIntake(RecordIntake intake, HeldRecordStore held)
{
    private const int Together = 500;

    // Each was held for the source whose key pushed it.
    private static readonly PushTerms AnySource = new(OwnSource: null, MissingPlace.Hold);

    /// <summary>Pushes again every held record that may pass now. What passes is accepted; what does not stays held until
    /// something new arrives that could change it. Running it twice, or in several processes at once, does no harm.</summary>
    /// <returns>How many were released.</returns>
    public async Task<int> ReleaseAsync(CancellationToken ct)
    {
        var released = 0;
        for (var last = 0L; ;)
        {
            var attemptTime = await held.ReadTimeAsync(ct);
            var ready = await held.ReadReleasableAsync(last, Together, ct);
            if (ready.Count == 0)
                return released;
            var outcomes = await intake.PushAsync([.. ready.Select(Read)], AnySource, ct);
            var left = ready.Zip(outcomes).Where(pair => pair.Second.State is not (Wire.RecordState.Accepted or Wire.RecordState.Unchanged)).ToList();
            if (left.Count > 0)
                await held.KeepAttemptAsync([.. left.Select(pair => pair.First.Id)], attemptTime, ct);
            released += ready.Count - left.Count;
            last = ready[^1].Id;
        }
    }

    /// <summary>Records that wait, oldest first, each with what it waits for now.</summary>
    /// <param name="source">Name of a source; empty for all.</param>
    /// <param name="registration">Registration mark; empty for all.</param>
    /// <param name="pageSize">Most to return, up to <see cref="RecordIntake.MaxRecords"/>.</param>
    /// <param name="pageToken">From the page before; empty for the first.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="FormatException">The page token is none of ours.</exception>
    public async Task<Page<Wire.HeldRecord>> ListAsync(
        string source, string registration, int pageSize, string pageToken, CancellationToken ct)
    {
        var page = await held.ListAsync(
            source.Length == 0 ? null : source, registration.Length == 0 ? null : registration.ToUpperInvariant(), pageSize, pageToken, ct);
        var records = page.Items.Select(Read).ToList();
        var outcomes = await intake.CheckAsync(records, AnySource, new CheckedAircraft(), ct);
        return new Page<Wire.HeldRecord>(
            [
                .. page.Items.Index().Select(line => new Wire.HeldRecord
                {
                    Record = records[line.Index],
                    HoldTime = Timestamp.FromDateTimeOffset(line.Item.HoldTime),
                    Awaits = outcomes[line.Index].Awaits ?? outcomes[line.Index].Error,
                }),
            ],
            page.NextPageToken);
    }

    private static Wire.Record Read(HeldRecord item) => Wire.Record.Parser.ParseFrom(item.Record);
}
