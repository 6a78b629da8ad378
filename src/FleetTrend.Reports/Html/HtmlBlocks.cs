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
                html.Open("p", paragraph.IsAside ? "ft-aside" : "");
                Line(paragraph.Line);
                html.Close("p");
                break;
            case Block.SubHeading heading:
                html.Element("h3", "", heading.Text);
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
        html.Open("ul", "");
        foreach (var item in bullets.Items)
        {
            html.Open("li", "");
            Line(item);
            html.Close("li");
        }

        html.Close("ul");
    }

    private void Card(Block.Card card)
    {
        html.Open("div", "ft-card");
        html.Open("h3", "");
        Line(card.Heading);
        if (card.Badge is { } badge)
        {
            html.Text(" ").Element("span", badge == "NEW" ? "ft-badge ft-new" : "ft-badge", badge);
        }

        html.Close("h3");
        foreach (var block in card.Blocks)
        {
            // Inside a card a heading stands one level deeper.
            if (block is Block.SubHeading heading) html.Element("h4", "", heading.Text);
            else Write(block);
        }

        html.Close("div");
    }

    private void Table(Block.Table table)
    {
        // A wide table scrolls by itself on a narrow screen, by keyboard too.
        html.Open("div", "ft-scroll", ("role", "region"), ("tabindex", "0"), ("aria-label", table.Caption));
        html.Open("table", "");
        html.Element("caption", "", table.Caption);
        html.Open("thead", "").Open("tr", "");
        foreach (var column in table.Columns)
            html.Element("th", Align(column), column.Heading, ("scope", "col"));
        html.Close("tr").Close("thead").Open("tbody", "");
        foreach (var row in table.Rows) Row(table, row);
        html.Close("tbody").Close("table").Close("div");
    }

    private void Row(Block.Table table, IReadOnlyList<Line> row)
    {
        html.Open("tr", "");
        for (var i = 0; i < row.Count; i++)
        {
            // On a narrow screen a row is a card, and each cell says what it is.
            var element = i == 0 ? "th" : "td";
            if (i == 0) html.Open(element, "", ("scope", "row"));
            else html.Open(element, Align(table.Columns[i]), ("data-label", table.Columns[i].Heading));
            Line(row[i], isCell: true);
            html.Close(element);
        }

        html.Close("tr");
    }

    private static string Align(Column column) => column.IsNumeric ? "ft-number" : "";

    private void Picture(Block.Picture picture)
    {
        html.Open("div", "ft-plot");
        html.Open(
            "img", "", ("src", plotAddress(picture.Name)), ("alt", picture.AltText),
            ("width", picture.Width.ToString(CultureInfo.InvariantCulture)),
            ("height", picture.Height.ToString(CultureInfo.InvariantCulture)));
        html.Element("p", "ft-aside", picture.Caption).Close("div");
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
                    html.Element("strong", "", strong.Text);
                    break;
                case Run.Link link:
                    html.Open("a", "", ("href", link.Target.IsAbsoluteUri ? link.Target.AbsoluteUri : link.Target.OriginalString))
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
        html.Open("span", "ft-figure");
        html.Element("strong", "ft-value", words.Value);
        html.Raw(isCell ? "<br>" : " (");
        html.Element("span", "ft-interval", words.Interval);
        html.Raw(isCell ? "<br>" : "; ");
        html.Element("span", "ft-counts", words.Counts);
        html.Raw(isCell ? " " : ") ");
        html.Element("span", "ft-method", $"[{number.MethodNumber}]");
        html.Close("span");
    }
}
