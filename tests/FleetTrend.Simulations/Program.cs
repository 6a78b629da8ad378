// Simulates data with known truth and writes how often the intervals hold it:
// dotnet run -c Release --project tests/FleetTrend.Simulations -- FILE [SECTION]
// FILE is src/FleetTrend.Statistics/COVERAGE.md or src/FleetTrend.Statistics/CALLS.md in this repository; its name says which page.
// With SECTION, a part of its title, only that section is made again and
// the others stay as they are in FILE. Seeds are fixed: the same program writes the same file.
using FleetTrend.Simulations;

if (args.Length is not (1 or 2))
{
    Console.Error.WriteLine("usage: FleetTrend.Simulations FILE [SECTION]");
    return 2;
}

var isCalls = Path.GetFileName(args[0]) == "CALLS.md";
List<Section> sections = [.. isCalls ? CallTables.Sections : Sections.All];
List<Section> made = [.. sections.Where(s => args.Length == 1 || s.Title.Contains(args[1], StringComparison.OrdinalIgnoreCase))];
if (made.Count == 0)
{
    Console.Error.WriteLine($"SECTION must be a part of one of these titles; got \"{args[1]}\"");
    foreach (var section in sections) Console.Error.WriteLine(section.Title);
    return 2;
}

const string Heading = "\n## ";
var kept = args.Length == 1 || !File.Exists(args[0])
    ? []
    : (await File.ReadAllTextAsync(args[0])).Split(Heading).Skip(1).ToDictionary(s => s.Split('\n')[0], s => s.TrimEnd('\n') + "\n", StringComparer.Ordinal);
using var output = new StringWriter { NewLine = "\n" };
if (isCalls)
    CallTables.WriteHead(output);
else
    Sections.WriteHead(output);
foreach (var section in sections)
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
