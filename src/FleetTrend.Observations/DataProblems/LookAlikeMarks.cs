namespace FleetTrend.Observations.DataProblems;

/// <summary>Registration marks of a fleet that are easily taken for each other: one of the two may be a slip of the pen.</summary>
/// <remarks>
/// Compared without hyphens, with O as 0 and I as 1; alike are marks that are then equal, or become so when two neighbouring
/// letters are swapped. Digits swapped are not alike: fleets are numbered, and 12 and 21 are two aircraft of most of them.
/// </remarks>
internal static class LookAlikeMarks
{
    /// <summary>Each pair once, with the aircraft whose mark is first in byte order.</summary>
    public static IEnumerable<DataProblem> Find(IReadOnlyList<AircraftMark> fleet)
    {
        var byMark = fleet.ToLookup(aircraft => Folded(aircraft.Registration), StringComparer.Ordinal);
        foreach (var aircraft in fleet)
        {
            var mark = aircraft.Registration;
            var alike = Alike(mark)
                .SelectMany(folded => byMark[folded])
                .Where(other => string.CompareOrdinal(mark, other.Registration) < 0)
                .DistinctBy(other => other.Registration, StringComparer.Ordinal)
                .OrderBy(other => other.Registration, StringComparer.Ordinal);
            foreach (var other in alike)
            {
                var (first, second) = (aircraft.WatchStartDate, other.WatchStartDate);
                yield return new DataProblem(
                    DataProblemKind.LookAlikeMarks,
                    mark,
                    first > second ? first : second,
                    $"{mark} and {other.Registration} are easily taken for each other: one of them may be a slip, with records of the other under it.",
                    [.. aircraft.DescribedBy, .. other.DescribedBy])
                {
                    OtherRegistration = other.Registration,
                    Subject = [],
                };
            }
        }
    }

    private static IEnumerable<string> Alike(string mark)
    {
        yield return Folded(mark);
        var letters = Bare(mark);
        for (var i = 0; i + 1 < letters.Length; i++)
        {
            if (!char.IsAsciiLetter(letters[i]) || !char.IsAsciiLetter(letters[i + 1]) || letters[i] == letters[i + 1])
                continue;
            yield return Folded(string.Concat(letters.AsSpan(0, i), [letters[i + 1], letters[i]], letters.AsSpan(i + 2)));
        }
    }

    private static string Bare(string mark) => mark.Replace("-", "", StringComparison.Ordinal).ToUpperInvariant();

    private static string Folded(string mark) => Bare(mark).Replace('O', '0').Replace('I', '1');
}
