using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of the codes of a source: how one is built, what it can mean, and how a record is read through them.</summary>
public static class CodeRules
{
    private const int MaxLength = 120;

    /// <summary>A code and its meaning, or every rule that it breaks.</summary>
    /// <param name="code">As sent; null is read as empty.</param>
    /// <param name="refusals">Every broken rule; the answer counts only where this is empty.</param>
    public static (SourceCode Code, CodeMeaning Meaning) Parse(Wire.SourceCode? code, out IReadOnlyList<Refusal> refusals)
    {
        code ??= new Wire.SourceCode();
        var root = new FieldReader(default);
        var reader = root.At("code");
        refusals = root.Refusals;
        var source = reader.Name("source", code.Source, Patterns.Source, Patterns.SourceRule);
        var text = reader.Line("code", code.Code, 1, MaxLength);
        CodeMeaning meaning = code.MeaningCase switch
        {
            Wire.SourceCode.MeaningOneofCase.Condition => new CodeMeaning.Condition(reader.Choice<Wire.Condition, Condition>("condition", code.Condition)),
            Wire.SourceCode.MeaningOneofCase.Action => new CodeMeaning.Action(reader.Choice<Wire.ActionKind, ActionKind>("action", code.Action)),
            Wire.SourceCode.MeaningOneofCase.Location =>
                new CodeMeaning.Location(reader.Name("location", code.Location, Patterns.Path, Patterns.PathRule)),
            _ => new CodeMeaning.Location(""),
        };
        if (code.MeaningCase == Wire.SourceCode.MeaningOneofCase.None)
            reader.Refuse("meaning", "", Reasons.FieldRequired, "must be exactly one of location, condition and action");
        return (new SourceCode(source, meaning.Kind, text), meaning);
    }

    /// <summary>A code by its name, or every rule that it breaks.</summary>
    /// <param name="request">As sent.</param>
    /// <param name="refusals">Every broken rule; the code counts only where this is empty.</param>
    public static SourceCode Parse(Wire.DeleteCodeRequest request, out IReadOnlyList<Refusal> refusals)
    {
        var reader = new FieldReader(default);
        refusals = reader.Refusals;
        return new SourceCode(
            reader.Name("source", request.Source, Patterns.Source, Patterns.SourceRule),
            reader.Choice<Wire.CodeKind, CodeKind>("kind", request.Kind),
            reader.Line("code", request.Code, 1, MaxLength));
    }

    /// <summary>True where a text is built as a code.</summary>
    internal static bool IsCode(string code)
    {
        var reader = new FieldReader(default);
        reader.Line("code", code, 1, MaxLength);
        return reader.Refusals.Count == 0;
    }

    /// <summary>What a code means; null where it is refused, or has no meaning yet.</summary>
    /// <param name="reader">Of the message that has the code.</param>
    /// <param name="field">The field of the code.</param>
    /// <param name="code">The code, not empty.</param>
    /// <param name="instead">The field in place of which the code stands, and whether it is given too.</param>
    /// <param name="known">Known codes.</param>
    internal static CodeMeaning? Read(
        FieldReader reader, string field, SourceCode code, (string Field, bool Given) instead, ReferenceData known)
    {
        var broken = reader.Refusals.Count;
        reader.Line(field, code.Code, 1, MaxLength);
        if (instead.Given)
            reader.Refuse(field, code.Code, Reasons.FieldNotAllowed, $"must be absent where {instead.Field} is given");
        if (reader.Refusals.Count > broken)
            return null;
        var meaning = known.Codes.GetValueOrDefault(code);
        if (meaning is null)
            reader.Refuse(field, code.Code, Reasons.CodeNotMapped, $"must be a code of source '{code.Source}' that has a meaning; SetCode gives it one");
        return meaning;
    }
}
