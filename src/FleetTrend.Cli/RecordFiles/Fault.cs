namespace FleetTrend.Cli.RecordFiles;

/// <summary>Why a row was not taken.</summary>
/// <param name="Row">The row that the rule speaks of: the thing's own, or one of its lines.</param>
/// <param name="Column">The column; empty where it is about the row as a whole.</param>
/// <param name="Reason">Reason of the error table, or one of the three that the command adds itself.</param>
/// <param name="Why">The rule, and what stood there.</param>
internal sealed record Fault(FileRow Row, string Column, string Reason, string Why)
{
    /// <summary>A cell that has not the form of its column; told by the command, nothing was sent.</summary>
    public const string CellNotReadable = "CELL_NOT_READABLE";

    /// <summary>A thing that makes a larger message than a server reads; told by the command, it was not sent.</summary>
    public const string RowTooLarge = "ROW_TOO_LARGE";

    /// <summary>A line of a thing that the folder does not have; told by the command, nothing was sent.</summary>
    public const string LineWithoutOwner = "LINE_WITHOUT_OWNER";

    /// <summary>What a cell must be, and what stood there.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="text">The cell.</param>
    /// <param name="nearest">The nearest right text; null where there is none.</param>
    public static string Words(string rule, string text, string? nearest = null) =>
        $"{rule}; got {(text.Length == 0 ? "nothing" : $"\"{text}\"")}{(nearest is null ? "" : $"; did you mean {nearest}?")}";
}
