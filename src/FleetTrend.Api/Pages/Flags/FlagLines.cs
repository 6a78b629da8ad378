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
        State = flag.State == FlagState.Acknowledged ? FlagLineState.Acknowledged : FlagLineState.Open,
        RaisedDate = DateOnly.FromDateTime(flag.RaiseTime.UtcDateTime),
        AcknowledgedBy = flag.AnsweredBy,
        AcknowledgedDate = flag.AnswerTime is { } answered ? DateOnly.FromDateTime(answered.UtcDateTime) : null,
        Note = flag.Answer,
    };

    /// <summary>The state of a flag in words, with who and when.</summary>
    public static string StateWords(this StoredFlag flag) => flag.State switch
    {
        FlagState.Open => $"Open since {NumberWords.Moment(flag.RaiseTime)}; nobody has answered",
        FlagState.Acknowledged => $"Acknowledged by {ForeignText.Quoted(flag.AnsweredBy ?? "")}, {NumberWords.Moment(flag.AnswerTime!.Value)}",
        _ => $"Closed by {ForeignText.Quoted(flag.AnsweredBy ?? "")}, {NumberWords.Moment(flag.AnswerTime!.Value)}",
    };
}
