using System.Text.Json;

namespace FleetTrend.Trends;

/// <summary>The answers of an analysis about one subject.</summary>
/// <param name="Subject">What they are about.</param>
/// <param name="Headlines">Figures whose history is kept.</param>
public abstract record SubjectResult(Subject Subject, IReadOnlyList<Headline> Headlines)
{
    /// <summary>How many answers.</summary>
    public abstract int Count { get; }

    /// <summary>The answers as JSON, in UTF-8.</summary>
    public abstract byte[] Write();
}

/// <summary>Answers of one type.</summary>
/// <param name="Subject">What they are about.</param>
/// <param name="Headlines">Figures whose history is kept.</param>
/// <param name="Items">The answers, before <see cref="Analysis{T}.Settle"/>.</param>
internal sealed record SubjectResult<T>(Subject Subject, IReadOnlyList<Headline> Headlines, IReadOnlyList<T> Items)
    : SubjectResult(Subject, Headlines)
{
    public override int Count => Items.Count;

    public override byte[] Write() => JsonSerializer.SerializeToUtf8Bytes(Items, TrendJson.Options);
}
