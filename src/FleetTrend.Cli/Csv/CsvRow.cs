using System.Globalization;

namespace FleetTrend.Cli.Csv;

/// <summary>One row, read field by field; what is wrong is collected, not thrown.</summary>
public sealed class CsvRow
{
    private readonly CsvTable table;
    private readonly CsvLine line;

    internal CsvRow(CsvTable table, CsvLine line)
    {
        this.table = table;
        this.line = line;
    }

    /// <summary>Line in the file, the header being line 1.</summary>
    public int Line => line.Number;

    /// <summary>The trimmed text of a column; empty where the file has no such column.</summary>
    public string Text(string column) => line.Text(column);

    /// <summary>Text that must not be empty.</summary>
    public string? Key(string column) => Text(column) is { Length: > 0 } text ? text : Refuse<string>(column, "must not be empty");

    /// <summary>A finite number, zero or more, or a default where the field is empty; null after a refusal.</summary>
    public double? Number(string column, double? whenEmpty = null)
    {
        var text = Text(column);
        if (text.Length == 0)
            return whenEmpty ?? Refuse(column, "must be a number", null);
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            && double.IsFinite(value) && value >= 0
                ? value
                : Refuse(column, "must be a finite number, zero or more, with a point for decimals", null);
    }

    /// <summary>A finite number of either sign; null after a refusal.</summary>
    public double? SignedNumber(string column) =>
        double.TryParse(Text(column), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? value
            : Refuse(column, "must be a finite number, with a point for decimals", null);

    /// <summary>A whole number, at least <paramref name="least"/>, or a default where the field is empty; null after a refusal.</summary>
    public int? Count(string column, int least, int? whenEmpty = null)
    {
        var text = Text(column);
        if (text.Length == 0 && whenEmpty is not null)
            return whenEmpty;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= least)
            return value;
        Refuse<string>(column, $"must be a whole number, {least} or more");
        return null;
    }

    /// <summary>Adds a problem with a column of this row; always null.</summary>
    public T? Refuse<T>(string column, string rule)
        where T : class
    {
        table.Problems.Add(new CsvProblem(table.File, Line, column, Text(column), rule));
        return null;
    }

    private double? Refuse(string column, string rule, double? value)
    {
        Refuse<string>(column, rule);
        return value;
    }
}
