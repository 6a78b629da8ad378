using FleetTrend.Contracts.V1;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>The files that import reads and export writes. Their columns and examples are in protos/CSV.md.</summary>
internal static class FileSet
{
    /// <summary>Column of inspections: <c>all</c> says that every location of the layout was examined but for the lines of looks.</summary>
    public const string Examined = "examined";

    private static readonly Column[] RecordKeys =
    [
        new("source", RecordKey.Descriptor.FindFieldByName("source")),
        new("source_record_id", RecordKey.Descriptor.FindFieldByName("source_record_id")),
        new("revision", RecordKey.Descriptor.FindFieldByName("revision")),
    ];

    /// <summary>Systems that push records.</summary>
    public static readonly FileForm Sources = new("sources.csv", Source.Descriptor, [Key(Source.Descriptor)]);

    /// <summary>Layouts.</summary>
    public static readonly FileForm Layouts = new("layouts.csv", Layout.Descriptor, [Key(Layout.Descriptor)]);

    /// <summary>Locations of the layouts.</summary>
    public static readonly FileForm Locations = new("locations.csv", Location.Descriptor, [new Column("layout", null)])
    {
        LinesOf = Layouts,
        Field = Layout.Descriptor.FindFieldByName("locations"),
    };

    /// <summary>Type groups.</summary>
    public static readonly FileForm TypeGroups = new("type_groups.csv", TypeGroup.Descriptor, [Key(TypeGroup.Descriptor)]);

    /// <summary>Inspections.</summary>
    public static readonly FileForm Inspections = Form("inspections.csv", "inspection", Examined);

    /// <summary>Aircraft.</summary>
    public static readonly FileForm Aircraft = Form("aircraft.csv", "aircraft");

    /// <summary>Practice changes.</summary>
    public static readonly FileForm PracticeChanges = Form("practice_changes.csv", "practice_change");

    /// <summary>Files of records, in the order in which they are pushed: what others refer to comes first.</summary>
    public static readonly IReadOnlyList<FileForm> Records =
    [
        Aircraft,
        Form("readings.csv", "meter_reading"),
        Form("meter_changes.csv", "meter_change"),
        Form("installations.csv", "installation"),
        Form("removals.csv", "removal"),
        Inspections,
        Form("findings.csv", "finding"),
        Form("actions.csv", "action"),
        PracticeChanges,
        Form("stock_counts.csv", "stock_count"),
        Form("retractions.csv", "retraction"),
    ];

    /// <summary>Files whose rows are lines of things of other files.</summary>
    public static readonly IReadOnlyList<FileForm> Lines =
    [
        Locations,
        new("assignments.csv", Assignment.Descriptor, RecordKeys)
        {
            LinesOf = Aircraft,
            Field = Contracts.V1.Aircraft.Descriptor.FindFieldByName("assignments"),
        },
        new("looks.csv", LocationLook.Descriptor, RecordKeys)
        {
            LinesOf = Inspections,
            Field = Inspection.Descriptor.FindFieldByName("looks"),
        },
        new("changed_locations.csv", ChangedLocation.Descriptor, RecordKeys)
        {
            LinesOf = PracticeChanges,
            Field = PracticeChange.Descriptor.FindFieldByName("locations"),
        },
    ];

    /// <summary>All files, in the order in which a reader wants them: lines after what they belong to.</summary>
    public static readonly IReadOnlyList<FileForm> All =
        [.. new[] { Sources, Layouts, TypeGroups }.Concat(Records).SelectMany(f => (FileForm[])[f, .. Lines.Where(l => l.LinesOf == f)])];

    private static Column Key(Google.Protobuf.Reflection.MessageDescriptor message) => new("name", message.FindFieldByName("name"));

    private static FileForm Form(string name, string field, params IReadOnlyList<string> added)
    {
        var envelope = Record.Descriptor.FindFieldByName(field);
        return new FileForm(name, envelope.MessageType, RecordKeys, added) { Field = envelope };
    }
}
