using FleetTrend.Records.Findings;

namespace FleetTrend.Records.Layouts;

/// <summary>What a location is: which conditions make sense there, and whether it is a part with a life.</summary>
public sealed record LocationKind
{
    internal LocationKind(string name, string title, string lookFor, string? jascCode, Condition[] conditions, Condition[] failures)
    {
        Name = name;
        Title = title;
        LookFor = lookFor;
        JascCode = jascCode;
        Conditions = conditions;
        Failures = failures;
    }

    /// <summary>Name, such as <c>flange-weld</c>.</summary>
    public string Name { get; }

    /// <summary>For people.</summary>
    public string Title { get; }

    /// <summary>One line on what to look for. Common practice, no source.</summary>
    public string LookFor { get; }

    /// <summary>FAA Joint Aircraft System/Component code, or null.</summary>
    public string? JascCode { get; }

    /// <summary>Conditions that make sense here; any other is refused at the door.</summary>
    public IReadOnlyList<Condition> Conditions { get; }

    /// <summary>Conditions that end a life; empty where it is a place and not a part with a life.</summary>
    public IReadOnlyList<Condition> Failures { get; }

    /// <summary>True where it is a part with a life of its own, so that time to failure has a meaning.</summary>
    public bool HasLife => Failures.Count > 0;
}
