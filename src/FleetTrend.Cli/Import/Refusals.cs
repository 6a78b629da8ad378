using System.Globalization;
using System.Text.RegularExpressions;
using FleetTrend.Cli.RecordFiles;
using Google.Rpc;

namespace FleetTrend.Cli.Import;

/// <summary>Which row and column of the files a refusal of the server speaks of.</summary>
internal static partial class Refusals
{
    /// <summary>One fault per broken rule.</summary>
    public static IReadOnlyList<Fault> List(FileRecord record, Status error)
    {
        var violations = error.GetDetail<BadRequest>()?.FieldViolations;
        var reason = error.GetDetail<ErrorInfo>()?.Reason ?? ((Code)error.Code).ToString();
        return violations is { Count: > 0 }
            ? [.. violations.Select(v => Place(record, v.Field) is var (row, column)
                ? new Fault(row, column, v.Reason.Length > 0 ? v.Reason : reason, FileWords.Translate(v.Description))
                : throw new InvalidOperationException(v.Field))]
            : [new Fault(record.Row, "", reason, error.Message)];
    }

    private static (FileRow Row, string Column) Place(FileRecord record, string path)
    {
        var match = Path().Match(path);
        var field = match.Groups["field"].Value;
        if (match.Groups["index"].Success && match.Groups["sub"].Success
            && int.Parse(match.Groups["index"].ValueSpan, CultureInfo.InvariantCulture) is var index && index < record.Lines.Count)
        {
            return (record.Lines[index], match.Groups["sub"].Value);
        }

        return (record.Row, record.Row.Form.Columns.Any(c => c.Name == field) ? field : "");
    }

    // finding.size_mm, inspection.looks[3].location, key.revision
    [GeneratedRegex(@"^\w+\.(?<field>\w+)(\[(?<index>\d+)\])?(\.(?<sub>\w+))?", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Path();
}
