using System.Runtime.CompilerServices;
using FleetTrend.Cli.RecordFiles;
using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using Grpc.Core;

namespace FleetTrend.Cli.Import;

/// <summary>One import: what is referred to by name is registered, then all records go through one push.</summary>
internal sealed class ImportRun(RecordFolder folder, ChannelBase channel, PushOptions options, Rejects rejects)
{
    // Beyond it the server ends the stream, and with it the import; less, and still too much, is refused by the server.
    private const int MostBytes = 4 * 1024 * 1024;

    private readonly Registration registration = new(channel, options.ValidateOnly);
    private readonly Dictionary<long, FileRecord> sent = [];
    private readonly Lock door = new();
    private long next;

    /// <summary>What became of each file, as far as the run has come.</summary>
    public IReadOnlyDictionary<FileForm, FileCount> Counts { get; } =
        folder.Counts.Where(c => c.Key.LinesOf is null).ToDictionary(c => c.Key, c => new FileCount { Rows = c.Value });

    /// <summary>Things that have an outcome.</summary>
    public int Done => Counts.Values.Sum(c => c.Accepted + c.Unchanged + c.Held + c.Valid + c.Refused);

    /// <summary>Runs to the end.</summary>
    /// <param name="progress">Told how many things have an outcome.</param>
    /// <param name="ct">Cancels; what was acknowledged stays.</param>
    /// <exception cref="RpcException">A registering call could not be made.</exception>
    /// <exception cref="PushStoppedException">The push could not go on.</exception>
    public async Task RunAsync(IProgress<int> progress, CancellationToken ct)
    {
        if (folder.NeedsSource && folder.Source.Length == 0)
            folder.Source = await registration.OwnSourceAsync(ct);
        foreach (var form in (FileForm[])[FileSet.Sources, FileSet.Layouts, FileSet.TypeGroups])
        {
            foreach (var thing in folder.Read(form))
            {
                Settle(thing, thing.Faults.Count > 0 ? Unreadable : await registration.RegisterAsync(thing, ct), thing.Faults);
                progress.Report(Done);
            }
        }

        await foreach (var pushed in new RecordPusher(channel, options).PushAsync(RecordsAsync(ct), ct))
        {
            FileRecord? record;
            lock (door)
            {
                sent.Remove(pushed.Index, out record);
                Settle(record!, pushed.Outcome, []);
            }

            progress.Report(Done);
        }

        foreach (var fault in FileSet.Lines.SelectMany(folder.LinesWithoutOwner))
        {
            rejects.Add(fault);
            OrphanLines++;
        }
    }

    /// <summary>Lines that belong to nothing; they are in the rejects folder.</summary>
    public int OrphanLines { get; private set; }

    private static RecordOutcome Unreadable => new() { State = RecordState.Refused };

    // Read by the push while outcomes are settled: what both touch is behind the door.
    private async IAsyncEnumerable<Record> RecordsAsync([EnumeratorCancellation] CancellationToken ct)
    {
        var worksheets = new FullWorksheets(registration);
        foreach (var row in FileSet.Records.SelectMany(folder.Read))
        {
            var record = (Record)row.Message;
            var faults = row.Faults;
            if (row.Row.Form == FileSet.Aircraft)
                worksheets.Remember(record.Aircraft);
            else if (faults.Count == 0 && row.Row.Form == FileSet.Inspections && await worksheets.CompleteAsync(row, ct) is { } fault)
                faults = [fault];
            if (faults.Count == 0 && record.CalculateSize() is > MostBytes and var bytes)
                faults = [new Fault(row.Row, "", Fault.RowTooLarge, $"must be up to {MostBytes:#,0} bytes with all its lines; got {bytes:#,0}")];
            lock (door)
            {
                if (faults.Count == 0)
                    sent.Add(next++, row);
                else
                    Settle(row, Unreadable, faults);
            }

            if (faults.Count == 0)
                yield return record;
        }
    }

    private void Settle(FileRecord record, RecordOutcome outcome, IReadOnlyList<Fault> faults)
    {
        Counts[record.Row.Form].Add(outcome.State);
        if (outcome.State == RecordState.Refused)
            rejects.Add(record, outcome.Error is null ? faults : Refusals.List(record, outcome.Error));
    }
}
