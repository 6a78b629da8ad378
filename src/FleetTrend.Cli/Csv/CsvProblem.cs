namespace FleetTrend.Cli.Csv;

/// <summary>What is wrong with one field of a file.</summary>
/// <param name="File">Path as given.</param>
/// <param name="Line">Line in the file, the header being line 1; 0 where it is about the file as a whole.</param>
/// <param name="Column">Column's name.</param>
/// <param name="Value">Text found there.</param>
/// <param name="Rule">What it must be; no full stop, the value follows it.</param>
public sealed record CsvProblem(string File, int Line, string Column, string Value, string Rule)
{
    /// <summary>One line for people: file, line, column, rule, value.</summary>
    public override string ToString() => $"{File}, line {Line}, column {Column}: {Rule}; got {(Value.Length == 0 ? "nothing" : $"\"{Value}\"")}";
}
