using System.Text.Json.Serialization;

namespace FleetTrend.Reports.Blocks;

/// <summary>A piece of a report that every renderer can show: mail text, mail HTML, page. Stored as JSON: a kind keeps its name for ever.</summary>
[JsonDerivedType(typeof(Paragraph), "paragraph")]
[JsonDerivedType(typeof(SubHeading), "sub-heading")]
[JsonDerivedType(typeof(Bullets), "bullets")]
[JsonDerivedType(typeof(Table), "table")]
[JsonDerivedType(typeof(Card), "card")]
[JsonDerivedType(typeof(Picture), "picture")]
public abstract record Block
{
    private Block()
    {
    }

    /// <summary>A paragraph.</summary>
    /// <param name="Line">What it says.</param>
    /// <param name="IsAside">True where it is small print.</param>
    public sealed record Paragraph(Line Line, bool IsAside = false) : Block;

    /// <summary>A heading inside a section.</summary>
    /// <param name="Text">What it says.</param>
    public sealed record SubHeading(string Text) : Block;

    /// <summary>A list.</summary>
    /// <param name="Items">A line each.</param>
    public sealed record Bullets(IReadOnlyList<Line> Items) : Block;

    /// <summary>A table; the first cell of a row is its heading.</summary>
    /// <param name="Caption">What it shows, and as of when.</param>
    /// <param name="Columns">Its columns.</param>
    /// <param name="Rows">Its rows, a cell per column.</param>
    public sealed record Table(string Caption, IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<Line>> Rows) : Block;

    /// <summary>One thing to look at, with what is said about it.</summary>
    /// <param name="Heading">What it is about.</param>
    /// <param name="Badge">One word of state, such as <c>NEW</c>; null for none.</param>
    /// <param name="Blocks">What is said.</param>
    public sealed record Card(Line Heading, string? Badge, IReadOnlyList<Block> Blocks) : Block;

    /// <summary>The place of a plot.</summary>
    /// <param name="Name">File name of its bitmap, unique in a report.</param>
    /// <param name="AltText">What it shows, for those who cannot see it.</param>
    /// <param name="Caption">The line below it: what it shows, counts, method, as-of date.</param>
    /// <param name="Width">Width in CSS pixels.</param>
    /// <param name="Height">Height in CSS pixels.</param>
    public sealed record Picture(string Name, string AltText, string Caption, int Width, int Height) : Block;
}
