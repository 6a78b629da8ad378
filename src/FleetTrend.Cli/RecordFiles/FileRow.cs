using FleetTrend.Cli.Csv;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>One row of one file of the set.</summary>
/// <param name="Form">The file it stands in.</param>
/// <param name="Line">The row.</param>
internal sealed record FileRow(FileForm Form, CsvLine Line);
