using FleetTrend.Records.Actions;

namespace FleetTrend.Records.Sources;

/// <summary>What a code means in our words: <see cref="Location"/>, <see cref="Condition"/> or <see cref="Action"/>.</summary>
public abstract record CodeMeaning
{
    private CodeMeaning()
    {
    }

    /// <summary>The kind of code that can mean this.</summary>
    public CodeKind Kind => this switch
    {
        Location => CodeKind.Location,
        Condition => CodeKind.Condition,
        _ => CodeKind.Action,
    };

    /// <summary>A location.</summary>
    /// <param name="Path">Path of a location that some layout has.</param>
    public sealed record Location(string Path) : CodeMeaning;

    /// <summary>A condition.</summary>
    /// <param name="Value">The condition.</param>
    public sealed record Condition(Findings.Condition Value) : CodeMeaning;

    /// <summary>A kind of action.</summary>
    /// <param name="Value">The kind.</param>
    public sealed record Action(ActionKind Value) : CodeMeaning;
}
