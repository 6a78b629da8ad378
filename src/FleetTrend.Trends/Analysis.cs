using System.Text.Json;

namespace FleetTrend.Trends;

/// <summary>
/// One question about the aircraft of a type group, with its answers by subject. Pure: the same inputs give the same answers. It stands
/// with its result in the folder of its name; <see cref="Analyses"/> names all of them.
/// </summary>
public abstract class Analysis
{
    private protected Analysis(string name) => Name = name;

    /// <summary>Name under which its results are stored, such as <c>rates</c>; it never changes.</summary>
    public string Name { get; }

    /// <summary>Answers for a type group.</summary>
    internal abstract AnalysisResult Compute(TypeGroupInputs inputs);
}

/// <summary>An analysis whose answers are of one type.</summary>
/// <typeparam name="T">One answer; it goes to JSON and back without loss.</typeparam>
/// <param name="name">Name under which its results are stored; it never changes.</param>
public abstract class Analysis<T>(string name) : Analysis(name)
    where T : notnull
{
    /// <summary>Finds the answers, those about one subject next to each other.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="tests">Takes the p-value of every test that was made, shown or not: what is called allows for all of them.</param>
    protected abstract IEnumerable<T> Find(TypeGroupInputs inputs, ICollection<double> tests);

    /// <summary>What an answer is about.</summary>
    public abstract Subject SubjectOf(T item);

    /// <summary>The figure of an answer whose history is kept; null where it has none.</summary>
    public virtual Headline? HeadlineOf(T item) => null;

    /// <summary>
    /// The answers of all type groups in the order in which they are read: as they come, where an analysis does not say. Where several type groups speak of one
    /// thing, as a part number, it stands once.
    /// </summary>
    public virtual IEnumerable<T> Order(IEnumerable<T> items) => items;

    /// <summary>The answers about one subject, with what only all tests of the fleet together decide.</summary>
    /// <param name="items">The answers.</param>
    /// <param name="tests">All tests of this analysis, of all type groups.</param>
    /// <param name="parameters">The choices.</param>
    public virtual IReadOnlyList<T> Settle(IReadOnlyList<T> items, TestFamily tests, TrendParameters parameters) => items;

    /// <summary>The answers of a stored row.</summary>
    /// <exception cref="JsonException">They are none of this analysis.</exception>
    public IReadOnlyList<T> Read(string detail) =>
        JsonSerializer.Deserialize<List<T>>(detail, TrendJson.Options) ?? throw new JsonException($"A row of {Name} holds nothing.");

    internal sealed override AnalysisResult Compute(TypeGroupInputs inputs)
    {
        var tests = new List<double>();
        var subjects = new List<SubjectResult>();
        var items = new List<T>();
        Subject? current = null;
        foreach (var item in Find(inputs, tests))
        {
            var subject = SubjectOf(item);
            if (current is { } before && before != subject)
                Close(before);
            current = subject;
            items.Add(item);
        }

        if (current is { } last)
            Close(last);
        return new AnalysisResult(this, subjects, TestCounts.Count(tests));

        void Close(Subject subject)
        {
            subjects.Add(new SubjectResult<T>(subject, [.. items.Select(HeadlineOf).OfType<Headline>()], [.. items]));
            items.Clear();
        }
    }
}
