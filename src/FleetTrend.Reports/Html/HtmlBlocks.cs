using System.Globalization;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Html;

/// <summary>Blocks as HTML.</summary>
/// <param name="html">Where they go.</param>
/// <param name="plotAddress">Address of a plot by its name.</param>
internal sealed class HtmlBlocks(HtmlWriter html, Func<string, string> plotAddress)
{
    public void Write(Block block)
    {
        switch (block)
        {
            case Block.Paragraph paragraph:
                html.Open("p", paragraph.IsAside ? HtmlStyle.Aside : HtmlStyle.Paragraph);
                Line(paragraph.Line);
                html.Close("p");
                break;
            case Block.SubHeading heading:
                html.Element("h3", HtmlStyle.SubHeading, heading.Text);
                break;
            case Block.Bullets bullets:
                List(bullets);
                break;
            case Block.Table table:
                Table(table);
                break;
            case Block.Card card:
                Card(card);
                break;
            case Block.Picture picture:
                Picture(picture);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "Unknown kind of block.");
        }
    }

    private void List(Block.Bullets bullets)
    {
        html.Open("ul", HtmlStyle.List);
        foreach (var item in bullets.Items)
        {
            html.Open("li", HtmlStyle.Item);
            Line(item);
            html.Close("li");
        }

        html.Close("ul");
    }

    private void Card(Block.Card card)
    {
        html.Open("div", HtmlStyle.Card, ("class", "ft-card"));
        html.Open("h3", HtmlStyle.CardHeading);
        Line(card.Heading);
        if (card.Badge is { } badge)
        {
            var isNew = badge == "NEW";
            html.Text(" ").Element("span", isNew ? HtmlStyle.BadgeNew : HtmlStyle.Badge, badge, ("class", isNew ? "ft-new" : "ft-badge"));
        }

        html.Close("h3");
        foreach (var block in card.Blocks)
        {
            // Inside a card a heading stands one level deeper.
            if (block is Block.SubHeading heading) html.Element("h4", HtmlStyle.SubHeading, heading.Text);
            else Write(block);
        }

        html.Close("div");
    }

    private void Table(Block.Table table)
    {
        // A wide table scrolls by itself on a narrow screen, by keyboard too.
        html.Open("div", HtmlStyle.Scroll, ("class", "ft-scroll"), ("role", "region"), ("tabindex", "0"), ("aria-label", table.Caption));
        html.Open("table", HtmlStyle.Table);
        html.Element("caption", HtmlStyle.TableCaption, table.Caption);
        html.Open("thead", string.Empty).Open("tr", string.Empty);
        foreach (var column in table.Columns)
            html.Element("th", HtmlStyle.ColumnHeading + Align(column), column.Heading, ("scope", "col"));
        html.Close("tr").Close("thead").Open("tbody", string.Empty);
        foreach (var row in table.Rows) Row(table, row);
        html.Close("tbody").Close("table").Close("div");
    }

    private void Row(Block.Table table, IReadOnlyList<Line> row)
    {
        html.Open("tr", string.Empty);
        for (var i = 0; i < row.Count; i++)
        {
            var element = i == 0 ? "th" : "td";
            if (i == 0) html.Open(element, HtmlStyle.RowHeading, ("scope", "row"));
            else html.Open(element, HtmlStyle.Cell + Align(table.Columns[i]));
            Line(row[i], isCell: true);
            html.Close(element);
        }

        html.Close("tr");
    }

    private static string Align(Column column) => column.IsNumeric ? HtmlStyle.Right : string.Empty;

    private void Picture(Block.Picture picture)
    {
        html.Open("div", HtmlStyle.Figure, ("class", "ft-plot"));
        html.Open(
            "img", HtmlStyle.Image, ("src", plotAddress(picture.Name)), ("alt", picture.AltText),
            ("width", picture.Width.ToString(CultureInfo.InvariantCulture)),
            ("height", picture.Height.ToString(CultureInfo.InvariantCulture)));
        html.Element("p", HtmlStyle.Aside, picture.Caption).Close("div");
    }

    private void Line(Line line, bool isCell = false)
    {
        foreach (var run in line.Runs)
        {
            switch (run)
            {
                case Run.Plain plain:
                    html.Text(plain.Text);
                    break;
                case Run.Strong strong:
                    html.Element("strong", string.Empty, strong.Text);
                    break;
                case Run.Link link:
                    html.Open("a", HtmlStyle.Link, ("href", link.Target.IsAbsoluteUri ? link.Target.AbsoluteUri : link.Target.OriginalString))
                        .Text(link.Text).Close("a");
                    break;
                case Run.Number number:
                    Figure(number, isCell);
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(line), run, "Unknown kind of run.");
            }
        }
    }

    private void Figure(Run.Number number, bool isCell)
    {
        var words = FigureWords.Format(number.Figure, number.Style);
        html.Open("span", string.Empty, ("class", "ft-figure"));
        html.Element("strong", string.Empty, words.Value, ("class", "ft-value"));
        html.Raw(isCell ? "<br>" : " (");
        html.Element("span", isCell ? HtmlStyle.Small : string.Empty, words.Interval, ("class", "ft-interval"));
        html.Raw(isCell ? "<br>" : "; ");
        html.Element("span", isCell ? HtmlStyle.Small : string.Empty, words.Counts, ("class", "ft-counts"));
        html.Raw(isCell ? " " : ") ");
        html.Element("span", HtmlStyle.Method, $"[{number.MethodNumber}]", ("class", "ft-method"));
        html.Close("span");
    }
}
