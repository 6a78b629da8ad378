// Simulates data with known truth and writes how often the intervals hold it:
// dotnet run -c Release --project tests/FleetTrend.Simulations -- FILE [SECTION]
// FILE is src/FleetTrend.Statistics/COVERAGE.md in this repository. With SECTION, a part of its title, only that section is made again and
// the others stay as they are in FILE. Seeds are fixed: the same program writes the same file.
using FleetTrend.Simulations;

if (args.Length is not (1 or 2))
{
    Console.Error.WriteLine("usage: FleetTrend.Simulations FILE [SECTION]");
    return 2;
}

List<Section> made = [.. Sections.All.Where(s => args.Length == 1 || s.Title.Contains(args[1], StringComparison.OrdinalIgnoreCase))];
if (made.Count == 0)
{
    Console.Error.WriteLine($"SECTION must be a part of one of these titles; got \"{args[1]}\"");
    foreach (var section in Sections.All) Console.Error.WriteLine(section.Title);
    return 2;
}

const string Heading = "\n## ";
var kept = args.Length == 1
    ? []
    : (await File.ReadAllTextAsync(args[0])).Split(Heading).Skip(1).ToDictionary(s => s.Split('\n')[0], s => s.TrimEnd('\n') + "\n", StringComparer.Ordinal);
using var output = new StringWriter { NewLine = "\n" };
output.WriteLine("# How often the intervals hold the truth");
output.WriteLine();
output.WriteLine("Written by `dotnet run -c Release --project tests/FleetTrend.Simulations -- src/FleetTrend.Statistics/COVERAGE.md`; seeds are fixed.");
output.WriteLine("A part of a section's title after it makes that section again and keeps the others. An interval at 95 % should hold the truth in 93 to 97 % of sets.");
foreach (var section in Sections.All)
{
    if (made.Any(s => s.Title == section.Title))
    {
        Console.WriteLine(section.Title);
        output.Write($"{Heading}{section.Title}\n\n");
        section.Write(output);
    }
    else if (kept.TryGetValue(section.Title, out var before))
    {
        output.Write(Heading + before);
    }
}

await File.WriteAllTextAsync(args[0], output.ToString());
return 0;
