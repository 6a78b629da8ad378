namespace FleetTrend.Records;

/// <summary>What a record says. Closed: every kind of record is a type of this project, and no other project can add one.</summary>
public abstract record RecordContent
{
    private protected RecordContent()
    {
    }

    /// <summary>Which kind of record it is.</summary>
    public abstract RecordKind RecordKind { get; }

    /// <summary>Calls the method of <paramref name="visitor"/> for this kind.</summary>
    /// <typeparam name="T">What the visitor makes of a record.</typeparam>
    public abstract T Accept<T>(IRecordContentVisitor<T> visitor);
}
