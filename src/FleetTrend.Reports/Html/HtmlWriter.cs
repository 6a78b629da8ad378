using System.Net;
using System.Text;
using FleetTrend.Records.Texts;

namespace FleetTrend.Reports.Html;

/// <summary>Writes HTML whose every text and attribute is escaped; nothing that came from a record is ever markup.</summary>
internal sealed class HtmlWriter
{
    private readonly StringBuilder html = new();

    /// <summary>Opens an element, with a class where it is not empty. Names and attribute names are ours, values are escaped.</summary>
    public HtmlWriter Open(string element, string cssClass, params (string Name, string Value)[] attributes)
    {
        html.Append('<').Append(element);
        foreach (var (name, value) in attributes) html.Append(' ').Append(name).Append("=\"").Append(Escape(value)).Append('"');
        if (cssClass.Length > 0) html.Append(" class=\"").Append(Escape(cssClass)).Append('"');
        html.Append('>');
        return this;
    }

    /// <summary>Closes an element.</summary>
    public HtmlWriter Close(string element)
    {
        html.Append("</").Append(element).Append('>');
        if (element is not ("span" or "a" or "strong" or "sup" or "text" or "tspan" or "line" or "circle")) html.Append('\n');
        return this;
    }

    /// <summary>Text, escaped.</summary>
    public HtmlWriter Text(string text)
    {
        html.Append(Escape(text));
        return this;
    }

    /// <summary>Markup of our own making, as it is.</summary>
    public HtmlWriter Raw(string markup)
    {
        html.Append(markup);
        return this;
    }

    /// <summary>An element with text alone.</summary>
    public HtmlWriter Element(string element, string cssClass, string text, params (string Name, string Value)[] attributes) =>
        Open(element, cssClass, attributes).Text(text).Close(element);

    /// <inheritdoc/>
    public override string ToString() => html.ToString();

    // Control characters have no place in HTML, escaped or not; characters that hide or turn text are written out.
    private static string Escape(string text) => WebUtility.HtmlEncode(ForeignText.OneLine(text));
}
