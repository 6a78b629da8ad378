using FleetTrend.Contracts.V1;

namespace FleetTrend.Cli.Import;

/// <summary>What became of the things of one file; lines count with what they belong to.</summary>
internal sealed class FileCount
{
    /// <summary>Rows of the file.</summary>
    public required int Rows { get; init; }

    /// <summary>Stored.</summary>
    public int Accepted { get; private set; }

    /// <summary>There already.</summary>
    public int Unchanged { get; private set; }

    /// <summary>Kept until an aircraft is registered or a code gets a meaning.</summary>
    public int Held { get; private set; }

    /// <summary>Checked only, and in order.</summary>
    public int Valid { get; private set; }

    /// <summary>Refused, here or by the server; they are in the rejects folder.</summary>
    public int Refused { get; private set; }

    /// <summary>Counts one outcome.</summary>
    public void Add(RecordState state)
    {
        switch (state)
        {
            case RecordState.Accepted:
                Accepted++;
                break;
            case RecordState.Unchanged:
                Unchanged++;
                break;
            case RecordState.Held:
                Held++;
                break;
            case RecordState.Valid:
                Valid++;
                break;
            default:
                Refused++;
                break;
        }
    }
}
