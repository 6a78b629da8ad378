using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of sources.</summary>
public static class SourceRules
{
    private const int MaxTitleLength = 120;

    /// <summary>The rule that a name of a source breaks, if any.</summary>
    /// <param name="field">The field that has it.</param>
    /// <param name="name">The name.</param>
    public static IReadOnlyList<Refusal> CheckName(string field, string name)
    {
        var reader = new FieldReader(default);
        reader.Name(field, name, Patterns.Source, Patterns.SourceRule);
        return reader.Refusals;
    }

    /// <summary>Every rule that a source breaks; empty where it may be registered.</summary>
    /// <param name="source">As sent; null is read as empty.</param>
    public static IReadOnlyList<Refusal> Check(Wire.Source? source)
    {
        source ??= new Wire.Source();
        var root = new FieldReader(default);
        var reader = root.At("source");
        reader.Name("name", source.Name, Patterns.Source, Patterns.SourceRule);
        reader.Line("title", source.Title, 0, MaxTitleLength);
        return root.Refusals;
    }
}
