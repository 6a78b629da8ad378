using System.Diagnostics;
using FleetTrend.Contracts.V1;

namespace FleetTrend.Client;

/// <summary>Records sent and without an outcome. Sender and receiver use it at the same time.</summary>
internal sealed class InFlight
{
    private readonly Lock door = new();
    private readonly SortedDictionary<long, Record> records = [];
    private long next;
    private long lastMove;

    /// <summary>How many.</summary>
    public int Count
    {
        get
        {
            lock (door)
            {
                return records.Count;
            }
        }
    }

    /// <summary>How long an outcome has been owed without any coming; zero where none is owed.</summary>
    public TimeSpan SilentFor
    {
        get
        {
            lock (door)
            {
                return records.Count == 0 ? TimeSpan.Zero : Stopwatch.GetElapsedTime(lastMove);
            }
        }
    }

    /// <summary>Adds a record; returns its sequence, from 0.</summary>
    public long Add(Record record)
    {
        lock (door)
        {
            if (records.Count == 0)
                lastMove = Stopwatch.GetTimestamp();
            records.Add(next, record);
            return next++;
        }
    }

    /// <summary>Takes a record out; null where it is not there.</summary>
    public Record? Take(long sequence)
    {
        lock (door)
        {
            lastMove = Stopwatch.GetTimestamp();
            return records.Remove(sequence, out var record) ? record : null;
        }
    }

    /// <summary>All, by sequence.</summary>
    public IReadOnlyList<(long Sequence, Record Record)> All()
    {
        lock (door)
        {
            return [.. records.Select(item => (item.Key, item.Value))];
        }
    }
}
