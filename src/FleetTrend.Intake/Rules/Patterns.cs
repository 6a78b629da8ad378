using System.Text.RegularExpressions;

namespace FleetTrend.Intake.Rules;

/// <summary>How names, marks and paths are built, each with the rule in words.</summary>
internal static partial class Patterns
{
    // Each is linear in its input; the limit guards against a later one that is not.
    private const int MatchTimeoutMilliseconds = 1_000;

    public const string RegistrationRule = "must be a registration mark: 2 to 10 of A-Z, 0-9 and '-', read without regard to case";
    public const string SourceRule = "must be a source name: 2 to 40 of a-z, 0-9 and '-'";
    public const string NameRule = "must be a name: 2 to 60 of a-z, 0-9 and '-'";
    public const string PathRule = "must be a location path: two to four parts of a-z, 0-9 and '-', joined by '/', up to 120 characters";
    public const string KeyIdRule = "must be the identifier of a key: 12 of a-z and 2-7";
    public const string JascRule = "must be a JASC code: four digits";

    [GeneratedRegex(@"\A[A-Za-z0-9-]{2,10}\z", RegexOptions.ExplicitCapture, MatchTimeoutMilliseconds)]
    public static partial Regex Registration { get; }

    [GeneratedRegex(@"\A[a-z0-9-]{2,40}\z", RegexOptions.ExplicitCapture, MatchTimeoutMilliseconds)]
    public static partial Regex Source { get; }

    [GeneratedRegex(@"\A[a-z0-9-]{2,60}\z", RegexOptions.ExplicitCapture, MatchTimeoutMilliseconds)]
    public static partial Regex Name { get; }

    [GeneratedRegex(@"\A(?=.{1,120}\z)[a-z0-9-]+(/[a-z0-9-]+){1,3}\z", RegexOptions.ExplicitCapture, MatchTimeoutMilliseconds)]
    public static partial Regex Path { get; }

    [GeneratedRegex(@"\A[a-z2-7]{12}\z", RegexOptions.ExplicitCapture, MatchTimeoutMilliseconds)]
    public static partial Regex KeyId { get; }

    [GeneratedRegex(@"\A[0-9]{4}\z", RegexOptions.ExplicitCapture, MatchTimeoutMilliseconds)]
    public static partial Regex Jasc { get; }
}
