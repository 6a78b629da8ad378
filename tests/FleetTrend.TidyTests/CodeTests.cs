using System.Globalization;
using System.Text.RegularExpressions;

namespace FleetTrend.TidyTests;

/// <summary>Habits of the code that a reader relies on.</summary>
public partial class CodeTests
{
    private const int MostLines = 400;

    private static IEnumerable<string> HandWritten => Repository.Files.Where(f =>
        f.EndsWith(".cs", StringComparison.Ordinal) && !f.Contains("/Migrations/", StringComparison.Ordinal));

    [Fact]
    public void No_hand_written_file_is_longer_than_400_lines() =>
        Assert.All(HandWritten, file => Assert.True(Repository.Read(file).Split('\n').Length <= MostLines, file));

    [Fact]
    public void No_line_is_longer_than_the_editorconfig_says()
    {
        var most = int.Parse(MaxLineLength().Match(Repository.Read(".editorconfig")).Groups["columns"].Value, CultureInfo.InvariantCulture);
        foreach (var file in HandWritten)
        {
            // A sentence stays whole, so that it can be searched for.
            var code = Quoted().Replace(RawText().Replace(Repository.Read(file), quoted => new string('\n', quoted.Value.Count(c => c == '\n'))), string.Empty);
            Assert.All(code.Split('\n').Index(), line => Assert.True(line.Item.Length <= most, $"{file}:{line.Index + 1} has {line.Item.Length} columns"));
        }
    }

    [Fact] // As dotnet_sort_system_directives_first of .editorconfig has it: namespaces, static ones, aliases; in each System first, then by name.
    public void The_usings_of_a_file_are_in_order() =>
        Assert.All(HandWritten, file =>
        {
            var usings = Using().Matches(Repository.Read(file)).ToList();
            var sorted = usings
                .OrderBy(u => u.Groups["alias"].Success ? 2 : u.Groups["static"].Success ? 1 : 0)
                .ThenBy(u => u.Groups["alias"].Success || $"{u.Groups["name"].Value}.".StartsWith("System.", StringComparison.Ordinal) ? 0 : 1)
                .ThenBy(u => u.Groups["alias"].Success ? u.Groups["alias"].Value : u.Groups["name"].Value, StringComparer.OrdinalIgnoreCase);
            Assert.True(sorted.SequenceEqual(usings), file);
        });

    [Fact]
    public void One_editorconfig_holds_for_every_project() => Assert.Single(Repository.Files, f => f.EndsWith(".editorconfig", StringComparison.Ordinal));

    [Fact]
    public void No_name_says_nothing() =>
        Assert.All(
            HandWritten.Where(f => f.StartsWith("src/", StringComparison.Ordinal)),
            file => Assert.False(EmptyName().IsMatch(Path.GetFileNameWithoutExtension(file)), file));

    [Fact]
    public void No_folder_collects_leftovers()
    {
        string[] refused = ["Common", "Shared", "Core", "Utils", "Util", "Helpers", "Extensions", "Misc"];
        Assert.All(Repository.Files, file =>
            Assert.DoesNotContain(file.Split('/')[..^1], folder => refused.Contains(folder, StringComparer.OrdinalIgnoreCase)));
    }

    [Fact]
    public void Nothing_is_unfinished_or_skipped() =>
        Assert.All(
            HandWritten.Where(f => !f.Contains("TidyTests", StringComparison.Ordinal)),
            file => Assert.False(Unfinished().IsMatch(Repository.Read(file)), file));

    [Fact]
    public void Every_method_of_statistics_names_its_source() =>
        Assert.All(
            HandWritten.Where(f => f.StartsWith("src/FleetTrend.Statistics/", StringComparison.Ordinal) && Estimator().IsMatch(Repository.Read(f))),
            file => Assert.Contains("Source:", Repository.Read(file), StringComparison.Ordinal));

    [Fact] // A library may write the same message in other bytes tomorrow; a database keeps the hash of today's.
    public void No_library_writes_what_the_hash_of_a_content_covers() =>
        Assert.All(
            HandWritten.Where(f => f is "src/FleetTrend.Intake/ContentHash.cs" or "src/FleetTrend.Intake/EncodedFields.cs"),
            file => Assert.DoesNotContain("Google.Protobuf", Repository.Read(file), StringComparison.Ordinal));

    // Two places that word the same thing come to disagree: "welded" and "weld-repaired", "3 Sep 2025" and 2025-09-03.
    [Fact]
    public void Only_the_modules_of_words_say_how_numbers_days_and_locations_read() =>
        Assert.All(
            HandWritten.Where(f => Wordy().IsMatch(f) && !f.Contains("/Words/", StringComparison.Ordinal)),
            file => Assert.False(OwnWords().IsMatch(Repository.Read(file)), file));

    [Fact]
    public void Every_reason_for_a_refusal_is_in_the_guide_for_integrators()
    {
        var guide = Repository.Read("protos/README.md");
        var reasons = HandWritten
            .Where(f => f.StartsWith("src/FleetTrend.Intake/", StringComparison.Ordinal) || f.StartsWith("src/FleetTrend.Api/", StringComparison.Ordinal))
            .SelectMany(f => Reason().Matches(Repository.Read(f)).Select(m => m.Groups["reason"].Value))
            .Distinct(StringComparer.Ordinal)
            .ToList();
        Assert.NotEmpty(reasons);
        Assert.All(reasons, reason => Assert.Contains(reason, guide, StringComparison.Ordinal));
    }

    [GeneratedRegex(@"^max_line_length = (?<columns>[0-9]+)$", RegexOptions.ExplicitCapture | RegexOptions.Multiline, matchTimeoutMilliseconds: 1000)]
    private static partial Regex MaxLineLength();

    [GeneratedRegex(
        @"^using (?<static>static )?((?<alias>\w+) = (?<name>[^;]+)|(?<name>[\w.:]+));$",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Using();

    [GeneratedRegex("\"\"\".*?\"\"\"", RegexOptions.ExplicitCapture | RegexOptions.Singleline, matchTimeoutMilliseconds: 1000)]
    private static partial Regex RawText();

    [GeneratedRegex(@"""([^""\\\n]|\\.)*""", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Quoted();

    [GeneratedRegex("(Manager|Helper|Helpers|Util|Utils|Processor|Engine|Calculator|(?<!Grpc)Service)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex EmptyName();

    [GeneratedRegex(@"^src/FleetTrend\.(Observations|Trends|Reports|Worker|Api/Pages)/", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Wordy();

    [GeneratedRegex(
        @"#,0|\bd MMM\b|Replace\('-', ' '\)|== 1 \? \$?""|Condition\.Crack => ""|ActionKind\.StopDrilled => """,
        RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex OwnWords();

    [GeneratedRegex(@"NotImplementedException|\bTODO\b|\bFIXME\b|\bHACK\b|Skip\s*=\s*""|Thread\.Sleep", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Unfinished();

    [GeneratedRegex(@"public static \S+ (Estimate|Fit|Test)\(", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Estimator();

    [GeneratedRegex(@"""(?<reason>[A-Z]{2,}(?:_[A-Z0-9]+){1,7})""", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Reason();
}
