// Prints how many times faster than R each task is, on the same files in the same run, against its floor.
//   dotnet run -c Release --project tests/FleetTrend.Benchmarks [-- FOLDER [WORD]]
// FOLDER keeps the generated files (default: a folder beside the program); WORD runs only races whose name contains it.
// Ends with 1 when a race misses its floor or its values differ from R's.
using System.Diagnostics;
using FleetTrend.Benchmarks;

var folder = Path.GetFullPath(args.Length > 0 ? args[0] : Path.Combine(AppContext.BaseDirectory, "files"));
var word = args.Length > 1 ? args[1] : "";
Race[] races = [.. Races.All.Where(r => r.Name.Contains(word, StringComparison.OrdinalIgnoreCase))];
await Reference.MakeFilesAsync(folder, [.. races.Select(r => r.Rows), 10_000, 100_000, 1_000_000]);

Console.WriteLine($"{"task",-46} {"rows",9} {"R",9} {"first",9} {"ours",9} {"ratio",8} {"floor",6}");
var missed = 0;
foreach (var race in races)
{
    var path = Path.Combine(folder, $"{race.File}_{race.Rows}.csv");
    var (reference, expected) = await Reference.TimeAsync(race.RTask, path);
    var work = race.Prepare(new PerformanceFile(path));
    var (first, values) = Time(work);
    var ours = Enumerable.Range(0, 5).Select(_ => Time(work).Seconds).Order().ElementAt(2);
    var ratio = reference / ours;
    var disagreement = race.Disagreement(values, expected);
    var isMissed = ratio < race.Floor || disagreement is not null;
    if (isMissed) missed++;
    Console.WriteLine(
        $"{race.Name,-46} {race.Rows,9} {reference,8:F2}s {first,8:F3}s {ours,8:F4}s {ratio,8:F1} {race.Floor,6:F0} {(isMissed ? "MISSED " : "ok ")}{disagreement}");
}

Console.WriteLine();
Console.WriteLine("Growth: seconds for 10^4, 10^5 and 10^6 rows (each ten times the rows)");
foreach (var race in races.DistinctBy(r => (r.Name, r.File)))
{
    var seconds = new List<double>();
    foreach (var rows in (int[])[10_000, 100_000, 1_000_000])
    {
        var work = race.Prepare(new PerformanceFile(Path.Combine(folder, $"{race.File}_{rows}.csv")));
        _ = work();
        seconds.Add(Enumerable.Range(0, 3).Select(_ => Time(work).Seconds).Min());
    }

    Console.WriteLine($"{race.Name,-46} {seconds[0],9:F4} {seconds[1],9:F4} {seconds[2],9:F4}");
}

return missed == 0 ? 0 : 1;

static (double Seconds, double[] Values) Time(Func<double[]> work)
{
    var clock = Stopwatch.StartNew();
    var values = work();
    return (clock.Elapsed.TotalSeconds, values);
}
