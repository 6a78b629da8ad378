using System.Globalization;
using FleetTrend.Records.Flags;
using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results;
using FleetTrend.Store.Flags;

namespace FleetTrend.Api.Pages.Flags;

/// <summary>Stored flags as pages show them.</summary>
internal static class FlagLines
{
    /// <summary>A flag that is not closed, with who acknowledged it.</summary>
    public static FlagLine ToLine(this StoredFlag flag) => new()
    {
        Flag = flag.Said(),
        State = flag.State is FlagState.Acknowledged or FlagState.ActedOn ? FlagLineState.Acknowledged : FlagLineState.Open,
        RaisedDate = DateOnly.FromDateTime(flag.RaiseTime.UtcDateTime),
        AcknowledgedBy = flag.AnsweredBy,
        AcknowledgedDate = flag.AnswerTime is { } answered ? DateOnly.FromDateTime(answered.UtcDateTime) : null,
        Note = flag.Answer,
    };

    /// <summary>A flag as a row of a table, with the address of its page.</summary>
    public static FlagRow ToRow(this StoredFlag flag) => new(
        flag.FlagId, flag.Said(), flag.StateWords(), new Uri(string.Create(CultureInfo.InvariantCulture, $"/flags/{flag.FlagId}"), UriKind.Relative));

    /// <summary>The state of a flag in words, with who and when.</summary>
    public static string StateWords(this StoredFlag flag) => flag.State switch
    {
        FlagState.Open => $"Open since {NumberWords.Moment(flag.RaiseTime)}; nobody has answered",
        FlagState.Watch => $"Watched since {NumberWords.Moment(flag.RaiseTime)}; nobody has answered",
        FlagState.Acknowledged => $"Acknowledged{Answered(flag)}",
        FlagState.ActedOn => $"Acted on {NumberWords.Day(flag.ActionDate!.Value)}, said{Answered(flag)}",
        FlagState.Helped => $"Helped, by the numbers of {NumberWords.Moment(flag.StateTime)}",
        FlagState.NoBetter => $"No better, by the numbers of {NumberWords.Moment(flag.StateTime)}",
        FlagState.Reopened => $"Reopened{Answered(flag)}",
        FlagState.Closed => $"Closed{Answered(flag)}",
    };

    /// <summary>A step as a line of the history.</summary>
    public static string Words(this StoredStep step)
    {
        var who = step.By is { } by ? $"by {ForeignText.Quoted(by)}" : "by the numbers";
        var hours = step.ActionTimeInService is { } time ? $" at {NumberWords.Hours(time.Value)}" : "";
        var action = step.ActionDate is { } day ? $", done {NumberWords.Day(day)}{hours}" : "";
        var assignee = step.Assignee is { } name ? $", to be seen to by {ForeignText.Quoted(name)}" : "";
        var note = step.Note.Length == 0 ? "" : step.By is null ? $": {step.Note}" : $": {ForeignText.Quoted(step.Note)}";
        return $"{NumberWords.Moment(step.StepTime)}: {Name(step.State)} {who}{action}{assignee}{note}";
    }

    private static string Name(FlagState state) => state switch
    {
        FlagState.Open => "flagged",
        FlagState.Watch => "watch",
        FlagState.Acknowledged => "acknowledged",
        FlagState.ActedOn => "acted on",
        FlagState.Helped => "helped",
        FlagState.NoBetter => "no better",
        FlagState.Reopened => "reopened",
        FlagState.Closed => "closed",
    };

    private static string Answered(StoredFlag flag) => $" by {ForeignText.Quoted(flag.AnsweredBy ?? "")}, {NumberWords.Moment(flag.AnswerTime!.Value)}";
}
