using System.Text;
using FleetTrend.Cli.RecordFiles;

namespace FleetTrend.Cli.Tests.RecordFiles;

/// <summary>protos/CSV.md lists the columns that the program reads, and shows the example files as they are.</summary>
public sealed class CsvGuideTests
{
    private const string Begin = "<!-- files: kept by CsvGuideTests -->";
    private const string End = "<!-- end of files -->";

    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "guide");

    [Fact]
    public void The_guide_lists_every_file_and_column_with_its_example()
    {
        var guide = File.ReadAllText(Path.Combine(Folder, "CSV.md"));
        var from = guide.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        var to = guide.IndexOf(End, StringComparison.Ordinal);
        var asItMustBe = Path.Combine(Folder, "CSV.must-be.md");
        File.WriteAllText(asItMustBe, guide[..from] + Files() + guide[to..]);
        Assert.True(guide[from..to] == Files(), $"protos/CSV.md is not as the files are; {asItMustBe} is.");
    }

    [Fact]
    public void The_examples_are_files_of_the_set() => Assert.Empty(RecordFolder.Open(Path.Combine(Folder, "csv")).Problems);

    private static string Files()
    {
        var text = new StringBuilder("\n");
        foreach (var form in FileSet.All)
        {
            text.Append($"\n### {form.Name}\n\n");
            if (form.LinesOf is { } owner)
                text.Append($"Lines of `{owner.Name}`, `{form.Field!.Name}` in the contract. ");
            text.Append($"Fields of `{form.Message.Name}`, `{form.Message.File.Name}`.\n\n| column | holds |\n| --- | --- |\n");
            foreach (var column in form.Columns)
                text.Append($"| `{column.Name}`{(form.Required.Contains(column.Name) ? " (must be there)" : "")} | {Holds(form, column)} |\n");
            var example = Path.Combine(Folder, "csv", form.Name);
            if (File.Exists(example))
                text.Append($"\n```csv\n{File.ReadAllText(example)}```\n");
        }

        return text.Append('\n').ToString();
    }

    private static string Holds(FileForm form, Column column) => (form, column.Field) switch
    {
        (_, { } field) => Cell.Form(field),
        var (f, _) when f == FileSet.Locations => "text: `name` in layouts.csv",
        _ => "`all` or empty, see above",
    };
}
