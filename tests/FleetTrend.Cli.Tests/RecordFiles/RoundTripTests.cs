using CsvHelper;
using FleetTrend.Cli.RecordFiles;
using FleetTrend.Contracts.V1;
using FleetTrend.Records.Layouts;
using FleetTrend.Synthetic;
using Google.Protobuf.Reflection;
using Layout = FleetTrend.Contracts.V1.Layout;
using Location = FleetTrend.Contracts.V1.Location;
using Record = FleetTrend.Contracts.V1.Record;

namespace FleetTrend.Cli.Tests.RecordFiles;

/// <summary>What is written to the files is what is read from them.</summary>
public sealed class RoundTripTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("files").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_whole_synthetic_fleet_comes_back_as_it_was()
    {
        Layout[] layouts = [.. ShippedLayouts.All.Select(ToWire)];
        var fleet = SyntheticSchool.Generate(3, new DateOnly(2026, 3, 31), layouts);
        using (var writer = new FolderWriter(folder))
        {
            foreach (var record in fleet.Records)
                writer.Write(record);
            foreach (var layout in layouts)
                writer.Write(FileSet.Layouts, layout);
        }

        var read = RecordFolder.Open(folder);

        Assert.Empty(read.Problems);
        var records = FileSet.Records.SelectMany(read.Read).ToList();
        Assert.All(records, r => Assert.Empty(r.Faults));
        Assert.Equal(
            fleet.Records.OrderBy(r => r.Key.SourceRecordId, StringComparer.Ordinal),
            records.Select(r => (Record)r.Message).OrderBy(r => r.Key.SourceRecordId, StringComparer.Ordinal));
        Assert.Equal(layouts, read.Read(FileSet.Layouts).Select(l => (Layout)l.Message));
    }

    [Fact] // Filled by the descriptors, so that a field added to the contract is covered from its first day.
    public void Every_field_of_every_record_has_a_column_and_comes_back()
    {
        var filled = FileSet.Records.Select(form =>
        {
            var record = new Record { Key = new RecordKey { Source = "shop", SourceRecordId = $"of {form.Name}", Revision = 3 } };
            form.Field!.Accessor.SetValue(record, Filled(form.Message));
            return record;
        }).ToList();
        using (var writer = new FolderWriter(folder))
            filled.ForEach(writer.Write);

        var read = RecordFolder.Open(folder);

        Assert.Empty(read.Problems);
        Assert.Equal(filled, FileSet.Records.SelectMany(read.Read).Select(r => (Record)r.Message));
    }

    // What spreadsheets take for a formula, as OWASP lists it ("CSV Injection"): =, +, -, @, tab, carriage return, line feed, full-width signs.
    public static TheoryData<string> Formulas =>
        ["=1+1", "+1", "-1", "@SUM(1)", "\t=1", "\r=1", "\n=1", "\uFF1D1", "=HYPERLINK(\"http://elsewhere.example\",\"a\")", "'=1", "''=1", "'", "'quoted'", "a=1"];

    [Theory]
    [MemberData(nameof(Formulas))]
    public void No_cell_is_a_formula_and_each_text_comes_back_as_it_was(string text)
    {
        var aircraft = new Record
        {
            Key = new RecordKey { Source = "shop", SourceRecordId = text.Trim(), Revision = 1 },
            Aircraft = new Aircraft
            {
                Registration = "ZZ-A01",
                WatchStartDate = new Google.Type.Date { Year = 2026, Month = 2, Day = 3 },
                MeterOffsetHours = -12.5,
                Assignments = { new Assignment { Base = text.Trim(), TypeGroup = "trainer-four" } },
            },
        };
        var retraction = new Record { Key = new RecordKey { Source = "shop", SourceRecordId = "r", Revision = 2 }, Retraction = new Retraction { Reason = text } };
        using (var writer = new FolderWriter(folder))
        {
            writer.Write(aircraft);
            writer.Write(retraction);
        }

        var cells = FileSet.All.Select(form => Path.Combine(folder, form.Name)).Where(File.Exists)
            .SelectMany(Cells).ToList();
        Assert.Contains("-12.5", cells);
        Assert.All(cells.Where(cell => cell != "-12.5"), cell => Assert.DoesNotMatch(@"\A[=+\-@\t\r\n\uFF1D]", cell));
        var read = RecordFolder.Open(folder);
        Assert.Equal([aircraft, retraction], FileSet.Records.SelectMany(read.Read).Select(r => (Record)r.Message));
    }

    [Fact]
    public void A_row_has_the_number_of_the_line_on_which_it_begins_in_the_file()
    {
        File.WriteAllText(
            Path.Combine(folder, "retractions.csv"), "source_record_id,revision,reason\nr 1,2,\"entered\ntwice\"\n\nr 2,two,entered twice\n");
        var read = RecordFolder.Open(folder).Read(FileSet.Records[^1]).ToList();
        Assert.Equal([2, 5], read.Select(r => r.Row.Line.Number));
        Assert.Equal("revision", Assert.Single(read[1].Faults).Column);
    }

    private static List<string> Cells(string file)
    {
        using var csv = CsvReader.FromFile(file, new CsvReaderOptions { Separator = ',' });
        var cells = new List<string>();
        while (csv.Read())
            cells.AddRange(csv.Current.ToArray());
        return cells;
    }

    private static Google.Protobuf.IMessage Filled(MessageDescriptor message)
    {
        var filled = message.Parser.ParseFrom([]);
        foreach (var field in message.Fields.InDeclarationOrder())
        {
            if (field.IsRepeated)
                ((System.Collections.IList)field.Accessor.GetValue(filled)).Add(Filled(field.MessageType));
            else
                field.Accessor.SetValue(filled, Value(field));
        }

        return filled;
    }

    private static object Value(FieldDescriptor field) => field.FieldType switch
    {
        FieldType.Double => 0.1 + field.FieldNumber,
        FieldType.Bool => true,
        FieldType.Int32 => field.FieldNumber,
        FieldType.Enum => field.EnumType.Values[^1].Number,
        FieldType.Message => new Google.Type.Date { Year = 2026, Month = 2, Day = field.FieldNumber },
        _ => $"{field.Name}, \"quoted\"\nwith a second line; =1+1",
    };

    private static Layout ToWire(FleetTrend.Records.Layouts.Layout layout) => new()
    {
        Name = layout.Name,
        Title = layout.Title,
        Locations = { layout.Locations.Select(l => new Location { Path = l.Path, Kind = l.Kind.Name, LookFor = l.LookFor }) },
    };
}
