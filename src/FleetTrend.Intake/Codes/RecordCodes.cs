using FleetTrend.Intake.Rules;
using FleetTrend.Records.Sources;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Codes;

/// <summary>The codes of its source that a record carries in place of our own words.</summary>
internal static class RecordCodes
{
    /// <summary>Every code that is built as one; a text that is none is refused by the rules.</summary>
    public static IEnumerable<SourceCode> Read(Wire.Record record)
    {
        var codes = record.ContentCase switch
        {
            Wire.Record.ContentOneofCase.Installation => [(CodeKind.Location, record.Installation.LocationCode)],
            Wire.Record.ContentOneofCase.Removal => [(CodeKind.Location, record.Removal.LocationCode)],
            Wire.Record.ContentOneofCase.Inspection => record.Inspection.Looks.Select(look => (CodeKind.Location, look.LocationCode)),
            Wire.Record.ContentOneofCase.Finding =>
                [(CodeKind.Location, record.Finding.LocationCode), (CodeKind.Condition, record.Finding.ConditionCode)],
            Wire.Record.ContentOneofCase.Action =>
                [(CodeKind.Location, record.Action.LocationCode), (CodeKind.Action, record.Action.KindCode)],
            Wire.Record.ContentOneofCase.None
                or Wire.Record.ContentOneofCase.Aircraft
                or Wire.Record.ContentOneofCase.MeterReading
                or Wire.Record.ContentOneofCase.MeterChange
                or Wire.Record.ContentOneofCase.PracticeChange
                or Wire.Record.ContentOneofCase.StockCount
                or Wire.Record.ContentOneofCase.Retraction => Enumerable.Empty<(CodeKind, string)>(),
        };
        return codes.Where(code => code.Item2.Length > 0 && IsKey(record, code.Item2))
            .Select(code => new SourceCode(record.Key.Source, code.Item1, code.Item2));
    }

    private static bool IsKey(Wire.Record record, string code) =>
        record.Key is not null && Patterns.Source.IsMatch(record.Key.Source) && CodeRules.IsCode(code);
}
