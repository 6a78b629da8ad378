using Google.Protobuf;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>What one row, with the lines that belong to it, says.</summary>
/// <param name="Message">A <c>Record</c>, or the thing itself for sources, layouts and type groups.</param>
/// <param name="Row">Its row.</param>
/// <param name="Lines">Its lines, in the order of their file.</param>
/// <param name="Faults">Cells that could not be read; with any, the message is not whole.</param>
internal sealed record FileRecord(IMessage Message, FileRow Row, IReadOnlyList<FileRow> Lines, IReadOnlyList<Fault> Faults);
