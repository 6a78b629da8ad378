using System.Text.RegularExpressions;
using Google.Rpc;

namespace FleetTrend.Intake.Tests;

/// <summary>The table of errors in protos/README.md is the list of reasons in the code.</summary>
public sealed class ReasonsTests
{
    private static readonly string Guide = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "guide", "README.md"));

    [Fact]
    public void The_guide_lists_every_reason_with_its_code_and_advice_and_no_other()
    {
        var listed = Regex.Matches(
                Guide, @"^\| `(?<reason>[A-Z_]+)` \| `(?<code>[A-Z_]+)` \| [^|]+ \| (?<advice>[^|]+) \|$",
                RegexOptions.Multiline | RegexOptions.NonBacktracking)
            .Select(m => (m.Groups["reason"].Value, m.Groups["code"].Value, m.Groups["advice"].Value));

        Assert.Equal(Reasons.All.Select(r => (r.Name, NameOf(r.Code), r.Advice)), listed);
    }

    [Fact]
    public void A_reason_stands_once_and_is_written_in_upper_case()
    {
        Assert.Equal(Reasons.All.Count, Reasons.All.Select(r => r.Name).Distinct().Count());
        Assert.All(Reasons.All, r => Assert.Matches("^[A-Z]+(_[A-Z]+)*$", r.Name));
    }

    /// <summary>As google/rpc/code.proto writes it: InvalidArgument is INVALID_ARGUMENT.</summary>
    private static string NameOf(Code code) => string.Concat(code.ToString().Select(
        (letter, i) => i > 0 && char.IsUpper(letter) ? "_" + letter : char.ToUpperInvariant(letter).ToString()));
}
