using System.Text;
using FleetTrend.Cli.RecordFiles;
using Record = FleetTrend.Contracts.V1.Record;

namespace FleetTrend.Cli.Tests.RecordFiles;

/// <summary>Files as spreadsheets and other tools write them: read as they are meant, or refused with what to do.</summary>
public sealed class ForeignFileTests : IDisposable
{
    private const string Header = "source_record_id,registration,reading_date,meter_hours";

    private readonly string folder = Directory.CreateTempSubdirectory("files").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_byte_order_mark_CRLF_and_lines_without_text_are_no_trouble()
    {
        Write("readings.csv", $"\uFEFF{Header}\r\nx1,ZZ-A01,2026-02-01,900.1\r\n,,,\r\n\r\n , ,,\r\nx2,ZZ-A01,2026-02-02,901\r\n");

        var records = Read();

        Assert.Equal(["x1", "x2"], records.Select(r => r.Key.SourceRecordId));
        Assert.Equal([900.1, 901], records.Select(r => r.MeterReading.MeterHours));
    }

    [Fact]
    public void A_note_comes_back_with_the_line_breaks_it_ends_with_and_other_texts_lose_their_spaces()
    {
        Write("findings.csv", "source_record_id,registration,time_in_service_hours,note\n f1 , ZZ-A01 ,5,\" two\nlines\n\"\nf2,ZZ-A01,5,  \n");

        var records = Read();

        Assert.Equal(("f1", "ZZ-A01", " two\nlines\n"), (records[0].Key.SourceRecordId, records[0].Finding.Registration, records[0].Finding.Note));
        Assert.Equal("", records[1].Finding.Note);
    }

    [Theory]
    [InlineData(";", "must be columns with commas between them")]
    [InlineData("\t", "must be columns with commas between them")]
    public void Columns_that_are_parted_otherwise_are_one_problem_that_says_so(string between, string words)
    {
        Write("readings.csv", $"{Header}\nx1,ZZ-A01,2026-02-01,900".Replace(",", between, StringComparison.Ordinal));

        var problem = Assert.Single(RecordFolder.Open(folder).Problems);

        Assert.Equal((1, true), (problem.Line, problem.Rule.StartsWith(words, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_file_that_is_no_UTF8_is_refused_with_its_line()
    {
        File.WriteAllBytes(Path.Combine(folder, "readings.csv"), Encoding.Latin1.GetBytes($"{Header}\nx1,ZZ-A01,2026-02-01,900\ncaf\u00e9,ZZ-A01,2026-02-02,901\n"));

        var problem = Assert.Single(RecordFolder.Open(folder).Problems);

        Assert.Equal((3, "must be UTF-8: save the file as CSV in UTF-8"), (problem.Line, problem.Rule));
    }

    [Fact]
    public void A_column_without_a_name_is_told_by_its_number()
    {
        Write("readings.csv", $"{Header},\nx1,ZZ-A01,2026-02-01,900,\n");

        Assert.Equal("(number 5)", Assert.Single(RecordFolder.Open(folder).Problems).Column);
    }

    [Fact] // Where file names are told apart by case, such a file would be passed over in silence.
    public void A_file_of_the_set_in_other_letters_is_a_stranger()
    {
        Write("readings.csv", $"{Header}\nx1,ZZ-A01,2026-02-01,900\n");
        Write("Findings.CSV", "source_record_id\nf1\n");

        Assert.Equal("Findings.CSV", Assert.Single(RecordFolder.Open(folder).Problems).Value);
    }

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(folder, file), text);

    private IReadOnlyList<Record> Read()
    {
        var read = RecordFolder.Open(folder);
        Assert.Empty(read.Problems);
        return [.. FileSet.Records.SelectMany(read.Read).Select(r => (Record)r.Message)];
    }
}
