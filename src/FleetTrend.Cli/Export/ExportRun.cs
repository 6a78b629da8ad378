using FleetTrend.Cli.Import;
using FleetTrend.Cli.RecordFiles;
using FleetTrend.Contracts.V1;
using Google.Protobuf.WellKnownTypes;
using Grpc.Core;

namespace FleetTrend.Cli.Export;

/// <summary>
/// One export: of every record the newest revision known at one moment, none that was taken back, and the layouts and type
/// groups that they refer to.
/// </summary>
internal sealed class ExportRun(ChannelBase channel, FolderWriter writer)
{
    private const int PageSize = 1_000;

    private readonly RecordService.RecordServiceClient records = new(channel);
    private readonly Registration registration = new(channel, validateOnly: false);

    /// <summary>The moment of knowledge of the export.</summary>
    public Timestamp? AsOfTime { get; private set; }

    /// <summary>Reads and writes everything.</summary>
    /// <param name="source">Only records of this source; empty for all that the key may see.</param>
    /// <param name="asOf">The moment of knowledge; null for now.</param>
    /// <param name="progress">Told how many records are written.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="RpcException">A call could not be made.</exception>
    public async Task RunAsync(string source, Timestamp? asOf, IProgress<int> progress, CancellationToken ct)
    {
        AsOfTime = asOf;
        var written = 0;
        foreach (var kind in System.Enum.GetValues<RecordKind>().Where(k => k != RecordKind.Unspecified))
        {
            var request = new ListRecordsRequest { Source = source, Kind = kind, AsOfTime = AsOfTime, PageSize = PageSize };
            do
            {
                var page = await records.ListRecordsAsync(request, cancellationToken: ct);
                AsOfTime ??= page.AsOfTime; // every further list is as of the moment of the first
                foreach (var stored in page.Records)
                    writer.Write(stored.Record);
                progress.Report(written += page.Records.Count);
                request.PageToken = page.NextPageToken;
            }
            while (request.PageToken.Length > 0);
        }

        await WriteNamesAsync(source, ct);
    }

    private async Task WriteNamesAsync(string source, CancellationToken ct)
    {
        var groups = await registration.TypeGroupsAsync(ct);
        var layouts = groups.Select(g => g.Layout).ToHashSet(StringComparer.Ordinal);
        foreach (var layout in (await registration.LayoutsAsync(ct)).Where(l => layouts.Contains(l.Name)))
            writer.Write(FileSet.Layouts, layout);
        foreach (var group in groups)
            writer.Write(FileSet.TypeGroups, group);
        foreach (var one in await registration.VisibleSourcesAsync(ct))
        {
            if (one.CreateTime is not null && (source.Length == 0 || one.Name == source)) // else only the name is to be had
                writer.Write(FileSet.Sources, one);
        }
    }
}
