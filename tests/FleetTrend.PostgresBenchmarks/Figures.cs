using System.Globalization;

namespace FleetTrend.PostgresBenchmarks;

/// <summary>Prints figures, each beside its floor where it has one, and counts the floors that are missed.</summary>
internal sealed class Figures(TextWriter output)
{
    /// <summary>Floors missed so far.</summary>
    public int Missed { get; private set; }

    /// <summary>Says what follows, and how busy the machine is: times of a busy one mean little.</summary>
    public void Title(string text) =>
        output.WriteLine($"\n{text} (load {Load()} on {Environment.ProcessorCount} processors)");

    public void Print(string name, double value, string unit) =>
        output.WriteLine($"  {name,-60} {Text(value),10} {unit}");

    /// <summary>A figure that must not be above its floor.</summary>
    public void AtMost(string name, double value, string unit, double floor) =>
        Judge(name, value, unit, $"at most {Text(floor)}", value <= floor);

    /// <summary>A figure that must not be below its floor.</summary>
    public void AtLeast(string name, double value, string unit, double floor) =>
        Judge(name, value, unit, $"at least {Text(floor)}", value >= floor);

    /// <summary>A figure that the product cannot have yet. Its floor counts as missed.</summary>
    public void NotYet(string name, string why)
    {
        Missed++;
        output.WriteLine($"  {name,-60} {"not yet",10} {why}");
    }

    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted[sorted.Count / 2];
    }

    /// <summary>The smallest value that this share of the values does not exceed.</summary>
    public static double Quantile(IEnumerable<double> values, double share)
    {
        var sorted = values.Order().ToList();
        return sorted[Math.Max(0, (int)Math.Ceiling(share * sorted.Count) - 1)];
    }

    /// <summary>Processes that ran or wanted to, on average over the last minute (Linux).</summary>
    private static string Load() => File.ReadAllText("/proc/loadavg").Split(' ')[0];

    private void Judge(string name, double value, string unit, string floor, bool holds)
    {
        if (!holds)
            Missed++;
        output.WriteLine($"  {name,-60} {Text(value),10} {unit,-4} {floor,-15} {(holds ? "ok" : "MISSED")}");
    }

    private static string Text(double value) =>
        value.ToString(Math.Abs(value) >= 100 ? "#,0" : Math.Abs(value) >= 10 ? "0.0" : "0.00", CultureInfo.InvariantCulture);
}
