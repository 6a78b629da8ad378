namespace FleetTrend.Records.Practices;

/// <summary>Work is done in another way from a day on: another torque practice, another gasket, a hanger moved. It belongs to no aircraft.</summary>
public sealed record PracticeChange : RecordContent
{
    /// <summary>The first day on which work was done in the new way; one after today is a plan.</summary>
    public required DateOnly ChangeDate { get; init; }

    /// <summary>The base that works in the new way; null for every base.</summary>
    public string? Base { get; init; }

    /// <summary>The type group on which it is done; null for every type group.</summary>
    public string? TypeGroup { get; init; }

    /// <summary>Paths of the locations that it is about, in ordinal order, none twice; empty for the whole aircraft.</summary>
    public IReadOnlyList<string> Locations { get; init; } = [];

    /// <summary>Part number or trade description of what goes in from then on; null where the part stays the same.</summary>
    public string? PartNumber { get; init; }

    /// <summary>What is done in another way, for people.</summary>
    public required string What { get; init; }

    /// <summary>Why, for people; null where it isn't told.</summary>
    public string? Why { get; init; }

    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.PracticeChange;

    /// <summary>True where the change is about that base, that type group and that location.</summary>
    /// <param name="atBase">The base of an aircraft.</param>
    /// <param name="typeGroup">Its type group.</param>
    /// <param name="location">Path of one of its locations.</param>
    public bool IsAbout(string atBase, string typeGroup, string location) =>
        (Base is null || Base == atBase)
        && (TypeGroup is null || TypeGroup == typeGroup)
        && (Locations.Count == 0 || Locations.Contains(location, StringComparer.Ordinal));

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}
