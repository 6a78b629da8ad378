namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>parameter_revisions</c>: one change of the parameters, never changed itself. The newest is in force.</summary>
internal sealed class ParameterRevisionRow
{
    /// <summary>Number of the change: 1, 2, 3, without gaps.</summary>
    public int Revision { get; set; }

    /// <summary>Every parameter as JSON, in the form of the trends.</summary>
    public string ValuesJson { get; set; } = "";

    public string ChangedBy { get; set; } = "";

    public string Note { get; set; } = "";

    /// <summary>Since when it is in force. A moment of knowledge, as the accept time of a record is.</summary>
    public DateTimeOffset ChangeTime { get; set; }
}
