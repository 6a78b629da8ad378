using System.Globalization;
using FleetTrend.Statistics;
using Spectre.Console;

namespace FleetTrend.Cli.Analysis;

/// <summary>How numbers and notes read in tables.</summary>
internal static class Words
{
    /// <summary>What every printed result says last.</summary>
    public const string Caution =
        "These figures support a decision and return no aircraft to service. Makers' instructions, airworthiness directives, local rules "
        + "and the licensed person who signs come first. A low rate is no evidence that an aircraft is sound.";

    /// <summary>Five significant digits; infinity in words.</summary>
    public static string Format(double value) =>
        double.IsInfinity(value) ? "no limit" : value.ToString("G5", CultureInfo.InvariantCulture);

    /// <summary>Lower and upper end; null is no limit.</summary>
    public static string Format(Range range) =>
        $"{Format(range.Lower ?? double.NegativeInfinity)} to {Format(range.Upper ?? double.PositiveInfinity)}";

    /// <summary>Lower and upper end.</summary>
    public static string Format(Interval interval) => $"{Format(interval.Lower)} to {Format(interval.Upper)}";

    /// <summary>Notes as lines.</summary>
    public static IEnumerable<Text> Format(IEnumerable<AnalysisNote> notes) =>
        notes.Select(n => new Text($"{n.About}: {n.Explanation}"));

    /// <summary>A table with a title and columns, numbers to the right.</summary>
    public static Table Table(string title, params string[] columns)
    {
        var table = new Table().Border(TableBorder.Simple).Title(new TableTitle(Markup.Escape(title)));
        for (var i = 0; i < columns.Length; i++)
            table.AddColumn(new TableColumn(Markup.Escape(columns[i])) { Alignment = i == 0 ? Justify.Left : Justify.Right });
        return table;
    }

    /// <summary>Adds a row of plain text.</summary>
    public static void Row(this Table table, params string[] cells) => table.AddRow(cells.Select(c => new Text(c)));
}
