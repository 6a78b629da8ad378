namespace FleetTrend.Reports.Weekly;

/// <summary>The methods of a report in order of first use, so that each figure can point at its own.</summary>
internal sealed class MethodList
{
    private readonly List<string> names = [];

    /// <summary>The names; the first has number 1.</summary>
    public IReadOnlyList<string> Names => names;

    /// <summary>The number of a method, new at its first use.</summary>
    public int NumberOf(string method)
    {
        var index = names.IndexOf(method);
        if (index >= 0) return index + 1;
        names.Add(method);
        return names.Count;
    }
}
