using Spectre.Console;

namespace FleetTrend.Cli.Import;

/// <summary>What became of an import, for people and for programs.</summary>
/// <param name="Folder">The folder imported.</param>
/// <param name="ValidateOnly">Whether nothing was to be stored.</param>
/// <param name="Files">Counts per file; lines count with what they belong to.</param>
/// <param name="LinesWithoutOwner">Lines that belong to nothing.</param>
/// <param name="Rejects">Folder of the refused rows; null where none was refused.</param>
internal sealed record ImportSummary(
    string Folder, bool ValidateOnly, IReadOnlyList<ImportSummary.FileSummary> Files, int LinesWithoutOwner, string? Rejects)
{
    /// <summary>One file.</summary>
    internal sealed record FileSummary(string File, int Rows, int Accepted, int Unchanged, int Held, int Valid, int Refused);

    /// <summary>Sums up a run.</summary>
    public static ImportSummary Build(string folder, bool validateOnly, ImportRun run, Rejects rejects) => new(
        folder,
        validateOnly,
        [.. run.Counts.Select(c => new FileSummary(
            c.Key.Name, c.Value.Rows, c.Value.Accepted, c.Value.Unchanged, c.Value.Held, c.Value.Valid, c.Value.Refused))],
        run.OrphanLines,
        rejects.Any ? rejects.Folder : null);

    /// <summary>Prints a table and what to do next.</summary>
    public void Print(IAnsiConsole console)
    {
        var table = new Table { Border = TableBorder.Simple };
        table.AddColumn("file");
        foreach (var heading in (string[])["rows", "accepted", "unchanged", "held", "valid", "refused"])
            table.AddColumn(heading, c => c.RightAligned());
        foreach (var file in Files.Append(Total()))
        {
            int[] counts = [file.Rows, file.Accepted, file.Unchanged, file.Held, file.Valid, file.Refused];
            table.AddRow([file.File, .. counts.Select(c => c.ToString("N0"))]);
        }

        console.Write(table);
        if (LinesWithoutOwner > 0)
            console.WriteLine($"{LinesWithoutOwner:N0} {(LinesWithoutOwner == 1 ? "line belongs" : "lines belong")} to nothing in the folder.");
        if (Files.Any(f => f.Held > 0))
            console.WriteLine("Held records are accepted on their own once their aircraft is registered and has the location, and their codes have a meaning.");
        if (Rejects is not null)
        {
            console.WriteLine(ValidateOnly
                ? $"Rows that would be refused are in {Rejects}, each with its reason. Correct them in {Folder}, and take {Rejects} away."
                : $"Refused rows are in {Rejects}, each with its reason. Correct them there and import that folder.");
        }

        if (ValidateOnly)
            console.WriteLine("Checked only: nothing was stored.");
    }

    private FileSummary Total() => new(
        "all", Files.Sum(f => f.Rows), Files.Sum(f => f.Accepted), Files.Sum(f => f.Unchanged), Files.Sum(f => f.Held),
        Files.Sum(f => f.Valid), Files.Sum(f => f.Refused));
}
