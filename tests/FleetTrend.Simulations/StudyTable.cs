using System.Globalization;

namespace FleetTrend.Simulations;

/// <summary>The coverage of recurrences, rates and norms, a row per study.</summary>
internal static class StudyTable
{
    private const int Runs = 1000;

    public static Section Section => new("Recurrences, rates, norms", Write);

    private static void Write(TextWriter output)
    {
        output.WriteLine($"{Runs} sets a row, four tenths of them where the distribution of rates is integrated over (one set holds an interval for every aircraft). \"Below\": intervals wholly below the truth.");
        output.WriteLine("\"No interval\": sets that gave a typed reason instead. The last column says why a row lies outside 93 to 97 %, and which is the better one.");
        output.WriteLine();
        output.WriteLine("| interval of | data | method | coverage | below | no interval | outside, because |");
        output.WriteLine("| --- | --- | --- | ---: | ---: | ---: | --- |");
        foreach (var study in RecurrenceStudies.All.Concat(RateStudies.All))
        {
            var coverage = Coverage.Estimate(study, Runs);
            var below = coverage.Intervals == 0 ? 0 : (double)coverage.Below / coverage.Intervals;
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {study.Quantity} | {study.Setting} | {study.Method} | {100 * coverage.Share:F1} % | {100 * below:F1} % | {coverage.None} of {coverage.Runs} | {(coverage.IsAsStated ? "" : study.Reason ?? "not explained")} |"));
        }
    }
}
