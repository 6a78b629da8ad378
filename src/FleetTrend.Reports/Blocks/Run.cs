using System.Text.Json.Serialization;
using FleetTrend.Trends;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Blocks;

/// <summary>One piece of a <see cref="Line"/>: words, a figure, or a link. Stored as JSON: a kind keeps its name for ever.</summary>
[JsonDerivedType(typeof(Plain), "plain")]
[JsonDerivedType(typeof(Strong), "strong")]
[JsonDerivedType(typeof(Number), "number")]
[JsonDerivedType(typeof(Link), "link")]
public abstract record Run
{
    private Run()
    {
    }

    /// <summary>Plain words.</summary>
    public static implicit operator Run(string text) => new Plain(text);

    /// <summary>Words as they are; renderers escape them.</summary>
    /// <param name="Text">The words.</param>
    public sealed record Plain(string Text) : Run;

    /// <summary>Words that carry the news.</summary>
    /// <param name="Text">The words.</param>
    public sealed record Strong(string Text) : Run;

    /// <summary>A number with its interval, counts and method; renderers always show all of them.</summary>
    /// <param name="Figure">The number.</param>
    /// <param name="Style">How its value reads.</param>
    /// <param name="MethodNumber">Number of its method in the report's list of methods, from 1.</param>
    public sealed record Number(Figure Figure, FigureStyle Style, int MethodNumber) : Run;

    /// <summary>A link.</summary>
    /// <param name="Text">The words.</param>
    /// <param name="Target">Where it leads; relative only on pages.</param>
    public sealed record Link(string Text, Uri Target) : Run;
}
