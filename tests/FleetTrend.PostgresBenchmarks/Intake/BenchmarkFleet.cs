using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using FleetTrend.Contracts.V1;
using Npgsql;
using Date = Google.Type.Date;

namespace FleetTrend.PostgresBenchmarks.Intake;

/// <summary>A synthetic fleet of 200 aircraft, 12 locations each, and as many findings of it as one asks for.</summary>
internal static class BenchmarkFleet
{
    public const string Source = "bench";
    private const int Aircraft = 200;
    private const string TypeGroup = "bench-group";
    private static readonly DateOnly FirstDay = new(2024, 1, 1);

    private static readonly string[] Locations =
        [.. Enumerable.Range(1, 6).SelectMany(c => new[] { $"exhaust/cyl-{c}/flange-weld", $"exhaust/cyl-{c}/y-weld" })];

    /// <summary>The layout and the aircraft, over the API as anyone would.</summary>
    public static async Task RegisterAsync(Grpc.Net.Client.GrpcChannel channel)
    {
        var layout = new Layout { Name = "bench-layout", Title = "Synthetic benchmark layout" };
        layout.Locations.AddRange(Locations.Select(path => new Location
        {
            Path = path,
            Kind = path[(path.LastIndexOf('/') + 1)..],
        }));
        var layouts = new LayoutService.LayoutServiceClient(channel);
        await layouts.CreateLayoutAsync(new CreateLayoutRequest { Layout = layout });
        await layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest
        {
            TypeGroup = new TypeGroup { Name = TypeGroup, Title = "Synthetic", Layout = layout.Name },
        });
        var request = new PushRecordsRequest();
        request.Records.AddRange(Enumerable.Range(0, Aircraft).Select(AircraftRecord));
        var response = await new IntakeService.IntakeServiceClient(channel).PushRecordsAsync(request);
        if (response.AcceptedCount != Aircraft)
            throw new InvalidOperationException($"Aircraft refused: {response.Outcomes.First(o => o.Error is not null).Error}");
    }

    /// <summary>One finding. Its identifier is spread at random, as the identifiers of most tools are: the hard case for an index.</summary>
    public static Record Finding(long number) => new()
    {
        Key = new RecordKey { Source = Source, SourceRecordId = Identifier(number), Revision = 1 },
        Finding = new Finding
        {
            Registration = Registration((int)(number % Aircraft)),
            Location = Locations[number / Aircraft % Locations.Length],
            FoundDate = Wire(Day(number)),
            TimeInServiceHours = Hours(number),
            Condition = Condition.Crack,
            SizeMm = 1 + number % 40,
            Method = LookMethod.Visual,
            Note = "synthetic: seen at the hundred-hour look",
        },
    };

    /// <summary>Makes <paramref name="count"/> stored findings in the database itself, to have a table of a size.</summary>
    public static async Task FillAsync(NpgsqlDataSource database, long from, long count)
    {
        await using var command = database.CreateCommand(
            """
            with made as (
                insert into records (id, source_id, source_record_id, revision, kind, aircraft_id, accept_time, content_hash)
                select nextval('records_id_seq'), (select id from sources where name = $1), 'F-' || upper(left(encode(sha256(n::text::bytea), 'hex'), 20)),
                    1, 7, (select min(id) from aircraft) + n % 200, now(), sha256(n::text::bytea)
                from generate_series($2, $3) n
                returning id, source_record_id)
            insert into findings (record_id, location, found_date, time_in_service_hours, condition, grade, size_mm, trace_colour, method, note)
            select id, 'exhaust/cyl-1/flange-weld', date '2024-01-01' + (id % 600)::int, 500 + id % 1000, 1, 1, 5, 0, 1, 'synthetic: seen at the hundred-hour look'
            from made
            """);
        command.CommandTimeout = 0;
        command.Parameters.Add(new NpgsqlParameter { Value = Source });
        command.Parameters.Add(new NpgsqlParameter { Value = from });
        command.Parameters.Add(new NpgsqlParameter { Value = from + count - 1 });
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>Writes the rows of findings as files that psql can copy: envelopes and contents.</summary>
    public static async Task WriteRowsAsync(
        string recordsFile, string findingsFile, long firstId, int sourceId, IReadOnlyList<int> aircraftIds, IEnumerable<long> numbers)
    {
        await using var records = new StreamWriter(recordsFile);
        await using var findings = new StreamWriter(findingsFile);
        var id = firstId;
        foreach (var number in numbers)
        {
            var finding = Finding(number).Finding;
            var hash = Convert.ToHexString(SHA256.HashData(BitConverter.GetBytes(number)));
            await records.WriteLineAsync(FormattableString.Invariant(
                $"{id}\t{sourceId}\t{Identifier(number)}\t1\t7\t{aircraftIds[(int)(number % Aircraft)]}\t2026-01-01 00:00:00+00\t\\\\x{hash}"));
            await findings.WriteLineAsync(FormattableString.Invariant(
                $"{id}\t{finding.Location}\t{Day(number):yyyy-MM-dd}\t{finding.TimeInServiceHours:F1}\t1\t1\t{finding.SizeMm}\t0\t1\t\\N\t{finding.Note}"));
            id++;
        }
    }

    private static Record AircraftRecord(int number) => new()
    {
        Key = new RecordKey { Source = Source, SourceRecordId = $"aircraft-{number}", Revision = 1 },
        Aircraft = new FleetTrend.Contracts.V1.Aircraft
        {
            Registration = Registration(number),
            WatchStartDate = Wire(FirstDay),
            Assignments = { new Assignment { FromDate = Wire(FirstDay), Base = "north", TypeGroup = TypeGroup } },
        },
    };

    private static string Registration(int number) => string.Create(CultureInfo.InvariantCulture, $"ZZ-{number:000}");

    private static string Identifier(long number) =>
        "F-" + Convert.ToHexString(SHA256.HashData(Encoding.ASCII.GetBytes(number.ToString(CultureInfo.InvariantCulture))))[..20];

    private static DateOnly Day(long number) => FirstDay.AddDays((int)(number % 600));

    private static double Hours(long number) => 500 + number % 9_000 / 10.0;

    private static Date Wire(DateOnly day) => new() { Year = day.Year, Month = day.Month, Day = day.Day };
}
