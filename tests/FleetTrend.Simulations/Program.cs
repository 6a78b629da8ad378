// Simulates data with known truth and writes how often the intervals hold it: dotnet run -c Release --project tests/FleetTrend.Simulations -- FILE
// FILE is src/FleetTrend.Statistics/COVERAGE.md in this repository. Seeds are fixed: the same program writes the same file.
using FleetTrend.Simulations;

if (args.Length != 1)
{
    Console.Error.WriteLine("usage: FleetTrend.Simulations FILE");
    return 2;
}

using var output = new StringWriter { NewLine = "\n" };
output.WriteLine("# How often the intervals hold the truth");
output.WriteLine();
output.WriteLine("Written by `dotnet run -c Release --project tests/FleetTrend.Simulations -- src/FleetTrend.Statistics/COVERAGE.md`; seeds are fixed.");
output.WriteLine("An interval at 95 % should hold the truth in 93 to 97 % of sets.");
foreach (var section in Sections.All)
{
    Console.WriteLine(section.Title);
    output.WriteLine();
    output.WriteLine($"## {section.Title}");
    output.WriteLine();
    section.Write(output);
}

await File.WriteAllTextAsync(args[0], output.ToString());
return 0;
