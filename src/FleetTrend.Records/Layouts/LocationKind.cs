using FleetTrend.Records.Findings;

namespace FleetTrend.Records.Layouts;

/// <summary>
/// What a location is: which conditions make sense there, whether it is a part with a life, and what to look for. Shipped ones
/// stand in <see cref="ShippedKinds"/>; an operator adds kinds of his own. Two are equal where all that they say is equal.
/// </summary>
public sealed record LocationKind
{
    /// <summary>Makes a kind.</summary>
    /// <param name="name">Name, such as <c>flange-weld</c>.</param>
    /// <param name="title">For people.</param>
    /// <param name="lookFor">One line on what to look for.</param>
    /// <param name="jascCode">FAA Joint Aircraft System/Component code, or null.</param>
    /// <param name="conditions">Conditions that make sense there, each once.</param>
    /// <param name="failures">Those of them that end a life; empty where it is a place and not a part.</param>
    /// <param name="watched">Those of them whose rate is given even where none was found.</param>
    /// <param name="checks">What to check where a condition keeps coming back at one place; a condition that is missing takes the general lines.</param>
    /// <param name="baseChecks">What to check where parts of this kind fail sooner at one base; empty takes the general lines.</param>
    /// <exception cref="ArgumentException">
    /// There is no condition, one stands twice, or a failure, watched condition or check is of a condition that makes no sense there.
    /// </exception>
    public LocationKind(
        string name,
        string title,
        string lookFor,
        string? jascCode,
        IReadOnlyList<Condition> conditions,
        IReadOnlyList<Condition> failures,
        IReadOnlyList<Condition> watched,
        IReadOnlyList<ConditionChecks> checks,
        IReadOnlyList<string> baseChecks)
    {
        if (conditions.Count == 0 || !AreDistinct(conditions) || !AreDistinct(failures) || !AreDistinct(watched))
            throw new ArgumentException("At least one condition, and each once.", nameof(conditions));
        var checkedFor = checks.Select(c => c.Condition).ToList();
        if (!AreDistinct(checkedFor) || failures.Concat(watched).Concat(checkedFor).Except(conditions).Any())
            throw new ArgumentException($"Kind '{name}' names a condition twice, or one that makes no sense there.", nameof(conditions));
        Name = name;
        Title = title;
        LookFor = lookFor;
        JascCode = jascCode;
        Conditions = conditions;
        Failures = failures;
        Watched = watched;
        Checks = checks;
        BaseChecks = baseChecks;
    }

    /// <summary>Name, such as <c>flange-weld</c>.</summary>
    public string Name { get; }

    /// <summary>For people.</summary>
    public string Title { get; }

    /// <summary>One line on what to look for.</summary>
    public string LookFor { get; }

    /// <summary>FAA Joint Aircraft System/Component code, or null.</summary>
    public string? JascCode { get; }

    /// <summary>Conditions that make sense here; any other is refused at the door.</summary>
    public IReadOnlyList<Condition> Conditions { get; }

    /// <summary>Conditions that end a life; empty where it is a place and not a part with a life.</summary>
    public IReadOnlyList<Condition> Failures { get; }

    /// <summary>
    /// Conditions that a look is for: their rate is given even where none was found, since the upper limit of none in so many
    /// hours is worth knowing.
    /// </summary>
    public IReadOnlyList<Condition> Watched { get; }

    /// <summary>What to check where a condition keeps coming back at one place.</summary>
    public IReadOnlyList<ConditionChecks> Checks { get; }

    /// <summary>What to check where parts of this kind fail sooner at one base than at the others.</summary>
    public IReadOnlyList<string> BaseChecks { get; }

    /// <summary>True where it is a part with a life of its own, so that time to failure has a meaning.</summary>
    public bool HasLife => Failures.Count > 0;

    /// <summary>What to check where the condition keeps coming back at one place, or null where the general lines serve.</summary>
    public IReadOnlyList<string>? ChecksFor(Condition condition) => Checks.FirstOrDefault(c => c.Condition == condition)?.Lines;

    /// <inheritdoc/>
    public bool Equals(LocationKind? other) =>
        other is not null
        && (Name, Title, LookFor, JascCode) == (other.Name, other.Title, other.LookFor, other.JascCode)
        && Conditions.SequenceEqual(other.Conditions)
        && Failures.SequenceEqual(other.Failures)
        && Watched.SequenceEqual(other.Watched)
        && Checks.SequenceEqual(other.Checks)
        && BaseChecks.SequenceEqual(other.BaseChecks, StringComparer.Ordinal);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Name);

    private static bool AreDistinct(IReadOnlyList<Condition> conditions) => conditions.Distinct().Count() == conditions.Count;
}
