using System.Text;
using FleetTrend.Records.Texts;

namespace FleetTrend.Reports.Text;

/// <summary>Lines of text, wrapped at blanks. A word longer than a line, such as an address, is cut so that no line is too long.</summary>
internal sealed class TextLines
{
    private const string QuoteMark = "> ";
    private readonly StringBuilder text = new();
    private bool endsBlank = true;

    /// <summary>A blank line, unless one stands there already.</summary>
    public void Blank()
    {
        if (endsBlank) return;
        text.Append('\n');
        endsBlank = true;
    }

    /// <summary>A paragraph. A line that goes on within a quotation is marked, so that none of it reads as a line of ours.</summary>
    /// <param name="line">Its words.</param>
    /// <param name="indent">Blanks before each line.</param>
    /// <param name="hanging">Further blanks before each line but the first.</param>
    public void Wrapped(string line, int indent = 0, int hanging = 0)
    {
        var current = new StringBuilder(new string(' ', indent));
        var isEmpty = true;
        var isQuoted = false;
        foreach (var word in Pieces(line, TextReport.Columns - indent - hanging - QuoteMark.Length))
        {
            if (!isEmpty && current.Length + 1 + word.Length > TextReport.Columns)
            {
                Emit(current);
                current.Clear().Append(' ', indent + hanging).Append(isQuoted ? QuoteMark : string.Empty);
                isEmpty = true;
            }

            if (!isEmpty) current.Append(' ');
            current.Append(word);
            isEmpty = false;
            isQuoted = ForeignText.IsOpenAfter(word, isQuoted);
        }

        Emit(current);
    }

    /// <summary>A line as it is; the caller has seen to its width.</summary>
    public void Exact(string line) => Emit(new StringBuilder(line));

    /// <inheritdoc/>
    public override string ToString() => text.ToString();

    /// <summary>Words with breaks taken for blanks, and characters that hide or turn text written out.</summary>
    public static IEnumerable<string> Words(string line) =>
        ForeignText.OneLine(line).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static IEnumerable<string> Pieces(string line, int width) =>
        Words(line).SelectMany(w => w.Chunk(width).Select(c => new string(c)));

    private void Emit(StringBuilder line)
    {
        text.Append(line.ToString().TrimEnd()).Append('\n');
        endsBlank = false;
    }
}
