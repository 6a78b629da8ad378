using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "aircraft",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    registration = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_aircraft", x => x.id);
                    table.CheckConstraint("ck_aircraft_registration", "registration ~ '^[A-Z0-9-]{2,10}$'");
                });

            migrationBuilder.CreateTable(
                name: "flags",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    subject = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    state = table.Column<short>(type: "smallint", nullable: false),
                    registration = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    @base = table.Column<string>(name: "base", type: "text", nullable: false, collation: "C"),
                    type_group = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    event_count = table.Column<int>(type: "integer", nullable: false),
                    body_json = table.Column<string>(type: "json", nullable: false),
                    raise_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    last_seen_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    answered_by = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    answer = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    answer_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    closed_event_count = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_flags", x => x.id);
                    table.CheckConstraint("ck_flags_answer", "(state = 1) = (answered_by is null) and (state = 1) = (answer_time is null)");
                    table.CheckConstraint("ck_flags_closed_event_count", "(state = 3) = (closed_event_count is not null)");
                    table.CheckConstraint("ck_flags_event_count", "event_count >= 0");
                    table.CheckConstraint("ck_flags_last_seen_time", "last_seen_time >= raise_time");
                    table.CheckConstraint("ck_flags_state", "state between 1 and 3");
                });

            migrationBuilder.CreateTable(
                name: "knowledge",
                columns: table => new
                {
                    id = table.Column<short>(type: "smallint", nullable: false),
                    last_as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_knowledge", x => x.id);
                    table.CheckConstraint("ck_knowledge_id", "id = 1");
                });

            migrationBuilder.CreateTable(
                name: "layouts",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    title = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_layouts", x => x.id);
                    table.CheckConstraint("ck_layouts_name", "name ~ '^[a-z0-9-]{2,60}$'");
                    table.CheckConstraint("ck_layouts_title", "char_length(title) between 0 and 120");
                });

            migrationBuilder.CreateTable(
                name: "locations",
                columns: table => new
                {
                    path = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    kind = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_locations", x => x.path);
                    table.CheckConstraint("ck_locations_kind", "kind in ('flange-weld', 'y-weld', 'stack-weld', 'tailpipe-weld', 'port-face', 'slip-joint', 'muffler-shell', 'hanger', 'probe', 'shroud-edge', 'gasket', 'clamp', 'clamp-bolt', 'muffler-baffle', 'tube-flange', 'tube', 'intake-gasket', 'coupling', 'hose-clamp', 'part', 'place')");
                    table.CheckConstraint("ck_locations_path", "path ~ '^[a-z0-9-]+(/[a-z0-9-]+){1,3}$'");
                });

            migrationBuilder.CreateTable(
                name: "recipients",
                columns: table => new
                {
                    @base = table.Column<string>(name: "base", type: "text", nullable: false, collation: "C"),
                    address = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_recipients", x => new { x.@base, x.address });
                    table.CheckConstraint("ck_recipients_address", "char_length(address) between 3 and 320");
                    table.CheckConstraint("ck_recipients_base", "char_length(base) between 1 and 60");
                });

            migrationBuilder.CreateTable(
                name: "refresh_requests",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    request_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_refresh_requests", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "report_requests",
                columns: table => new
                {
                    request_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    request_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()"),
                    lease_end_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    done_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_report_requests", x => x.request_id);
                    table.CheckConstraint("ck_report_requests_request_id", "char_length(request_id) between 1 and 60");
                });

            migrationBuilder.CreateTable(
                name: "reports",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    @base = table.Column<string>(name: "base", type: "text", nullable: false, collation: "C"),
                    period_start_date = table.Column<DateOnly>(type: "date", nullable: false),
                    period_end_date = table.Column<DateOnly>(type: "date", nullable: false),
                    as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    code_version = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    parameters_json = table.Column<string>(type: "json", nullable: false),
                    subject = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    text = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    html = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    message_id_seed = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_reports", x => x.id);
                    table.CheckConstraint("ck_reports_base", "char_length(base) between 1 and 60");
                    table.CheckConstraint("ck_reports_period", "period_start_date <= period_end_date");
                    table.CheckConstraint("ck_reports_period_end_date", "period_end_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_reports_period_start_date", "period_start_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_reports_subject", "char_length(subject) between 1 and 500");
                });

            migrationBuilder.CreateTable(
                name: "snapshots",
                columns: table => new
                {
                    as_of = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    code_version = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    parameters_json = table.Column<string>(type: "json", nullable: false),
                    trends_json = table.Column<string>(type: "json", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_snapshots", x => x.as_of);
                });

            migrationBuilder.CreateTable(
                name: "sources",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    title = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    create_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false, defaultValueSql: "clock_timestamp()")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sources", x => x.id);
                    table.CheckConstraint("ck_sources_name", "name ~ '^[a-z0-9-]{2,40}$'");
                    table.CheckConstraint("ck_sources_title", "char_length(title) between 0 and 120");
                });

            migrationBuilder.CreateTable(
                name: "type_groups",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    title = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    layout_id = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_type_groups", x => x.id);
                    table.CheckConstraint("ck_type_groups_name", "name ~ '^[a-z0-9-]{2,60}$'");
                    table.CheckConstraint("ck_type_groups_title", "char_length(title) between 0 and 120");
                    table.ForeignKey(
                        name: "fk_type_groups_layouts_layout_id",
                        column: x => x.layout_id,
                        principalTable: "layouts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "layout_locations",
                columns: table => new
                {
                    layout_id = table.Column<int>(type: "integer", nullable: false),
                    path = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    position = table.Column<int>(type: "integer", nullable: false),
                    look_for = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    jasc_code = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_layout_locations", x => new { x.layout_id, x.path });
                    table.CheckConstraint("ck_layout_locations_jasc_code", "jasc_code ~ '^[0-9]{4}$'");
                    table.CheckConstraint("ck_layout_locations_position", "position >= 0");
                    table.ForeignKey(
                        name: "fk_layout_locations_layouts_layout_id",
                        column: x => x.layout_id,
                        principalTable: "layouts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_layout_locations_locations_path",
                        column: x => x.path,
                        principalTable: "locations",
                        principalColumn: "path",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "outbox_mails",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    report_id = table.Column<long>(type: "bigint", nullable: false),
                    recipient = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    message_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    attempt_count = table.Column<int>(type: "integer", nullable: false),
                    next_attempt_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    sent_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    last_error = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_outbox_mails", x => x.id);
                    table.CheckConstraint("ck_outbox_mails_attempt_count", "attempt_count >= 0");
                    table.CheckConstraint("ck_outbox_mails_recipient", "char_length(recipient) between 3 and 320");
                    table.ForeignKey(
                        name: "fk_outbox_mails_reports_report_id",
                        column: x => x.report_id,
                        principalTable: "reports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "report_plots",
                columns: table => new
                {
                    report_id = table.Column<long>(type: "bigint", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    image = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_report_plots", x => new { x.report_id, x.name });
                    table.CheckConstraint("ck_report_plots_name", "char_length(name) between 1 and 120");
                    table.ForeignKey(
                        name: "fk_report_plots_reports_report_id",
                        column: x => x.report_id,
                        principalTable: "reports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "records",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    source_id = table.Column<int>(type: "integer", nullable: false),
                    source_record_id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    revision = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<short>(type: "smallint", nullable: false),
                    aircraft_id = table.Column<int>(type: "integer", nullable: true),
                    accept_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    content_hash = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_records", x => x.id);
                    table.CheckConstraint("ck_records_aircraft_id", "(kind = 9) = (aircraft_id is null)");
                    table.CheckConstraint("ck_records_content_hash", "octet_length(content_hash) = 32");
                    table.CheckConstraint("ck_records_kind", "kind between 1 and 9");
                    table.CheckConstraint("ck_records_retraction", "kind <> 9 or revision >= 2");
                    table.CheckConstraint("ck_records_revision", "revision >= 1");
                    table.CheckConstraint("ck_records_source_record_id", "char_length(source_record_id) between 1 and 120");
                    table.ForeignKey(
                        name: "fk_records_aircraft_aircraft_id",
                        column: x => x.aircraft_id,
                        principalTable: "aircraft",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_records_sources_source_id",
                        column: x => x.source_id,
                        principalTable: "sources",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "actions",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    location = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    action_date = table.Column<DateOnly>(type: "date", nullable: false),
                    time_in_service_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false),
                    kind = table.Column<short>(type: "smallint", nullable: false),
                    part_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: true),
                    note = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_actions", x => x.record_id);
                    table.CheckConstraint("ck_actions_action_date", "action_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_actions_kind", "kind between 1 and 9");
                    table.CheckConstraint("ck_actions_note", "char_length(note) between 1 and 2000");
                    table.CheckConstraint("ck_actions_part_hours", "part_hours is null or (part_hours >= 0 and kind = 3)");
                    table.CheckConstraint("ck_actions_time_in_service_hours", "time_in_service_hours >= 0");
                    table.ForeignKey(
                        name: "fk_actions_locations_location",
                        column: x => x.location,
                        principalTable: "locations",
                        principalColumn: "path",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_actions_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "airframes",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    watch_start_date = table.Column<DateOnly>(type: "date", nullable: false),
                    meter_offset_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false),
                    retired_date = table.Column<DateOnly>(type: "date", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_airframes", x => x.record_id);
                    table.CheckConstraint("ck_airframes_retired_date", "retired_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_airframes_watch_start_date", "watch_start_date between date '1900-01-01' and date '2199-12-31'");
                    table.ForeignKey(
                        name: "fk_airframes_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "findings",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    location = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    found_date = table.Column<DateOnly>(type: "date", nullable: false),
                    time_in_service_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false),
                    condition = table.Column<short>(type: "smallint", nullable: false),
                    grade = table.Column<short>(type: "smallint", nullable: false),
                    size_mm = table.Column<double>(type: "double precision", nullable: true),
                    trace_colour = table.Column<short>(type: "smallint", nullable: false),
                    method = table.Column<short>(type: "smallint", nullable: false),
                    same_event_as = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    note = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_findings", x => x.record_id);
                    table.CheckConstraint("ck_findings_condition", "condition between 1 and 10");
                    table.CheckConstraint("ck_findings_found_date", "found_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_findings_grade", "grade between 1 and 2");
                    table.CheckConstraint("ck_findings_method", "method between 0 and 7");
                    table.CheckConstraint("ck_findings_note", "char_length(note) between 1 and 2000");
                    table.CheckConstraint("ck_findings_same_event_as", "char_length(same_event_as) between 1 and 120");
                    table.CheckConstraint("ck_findings_size_mm", "size_mm > 0 and size_mm <= 10000");
                    table.CheckConstraint("ck_findings_time_in_service_hours", "time_in_service_hours >= 0");
                    table.CheckConstraint("ck_findings_trace_colour", "trace_colour between 0 and 6");
                    table.ForeignKey(
                        name: "fk_findings_locations_location",
                        column: x => x.location,
                        principalTable: "locations",
                        principalColumn: "path",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_findings_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "inspections",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    inspection_date = table.Column<DateOnly>(type: "date", nullable: false),
                    time_in_service_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false),
                    occasion = table.Column<short>(type: "smallint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_inspections", x => x.record_id);
                    table.CheckConstraint("ck_inspections_inspection_date", "inspection_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_inspections_occasion", "occasion between 1 and 6");
                    table.CheckConstraint("ck_inspections_time_in_service_hours", "time_in_service_hours >= 0");
                    table.ForeignKey(
                        name: "fk_inspections_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "installations",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    location = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    installation_date = table.Column<DateOnly>(type: "date", nullable: false),
                    time_in_service_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false),
                    part_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: true),
                    serial_number = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    part_number = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_installations", x => x.record_id);
                    table.CheckConstraint("ck_installations_installation_date", "installation_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_installations_part_hours", "part_hours >= 0");
                    table.CheckConstraint("ck_installations_part_number", "char_length(part_number) between 1 and 120");
                    table.CheckConstraint("ck_installations_serial_number", "char_length(serial_number) between 1 and 60");
                    table.CheckConstraint("ck_installations_time_in_service_hours", "time_in_service_hours >= 0");
                    table.ForeignKey(
                        name: "fk_installations_locations_location",
                        column: x => x.location,
                        principalTable: "locations",
                        principalColumn: "path",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_installations_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "meter_changes",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    change_date = table.Column<DateOnly>(type: "date", nullable: false),
                    old_meter_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false),
                    new_meter_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_meter_changes", x => x.record_id);
                    table.CheckConstraint("ck_meter_changes_change_date", "change_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_meter_changes_new_meter_hours", "new_meter_hours >= 0");
                    table.CheckConstraint("ck_meter_changes_old_meter_hours", "old_meter_hours >= 0");
                    table.ForeignKey(
                        name: "fk_meter_changes_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "meter_readings",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    reading_date = table.Column<DateOnly>(type: "date", nullable: false),
                    meter_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_meter_readings", x => x.record_id);
                    table.CheckConstraint("ck_meter_readings_meter_hours", "meter_hours >= 0");
                    table.CheckConstraint("ck_meter_readings_reading_date", "reading_date between date '1900-01-01' and date '2199-12-31'");
                    table.ForeignKey(
                        name: "fk_meter_readings_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "removals",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    location = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    removal_date = table.Column<DateOnly>(type: "date", nullable: false),
                    time_in_service_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: false),
                    reason = table.Column<short>(type: "smallint", nullable: false),
                    examined_good = table.Column<bool>(type: "boolean", nullable: false),
                    serial_number = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_removals", x => x.record_id);
                    table.CheckConstraint("ck_removals_reason", "reason between 1 and 6");
                    table.CheckConstraint("ck_removals_removal_date", "removal_date between date '1900-01-01' and date '2199-12-31'");
                    table.CheckConstraint("ck_removals_serial_number", "char_length(serial_number) between 1 and 60");
                    table.CheckConstraint("ck_removals_time_in_service_hours", "time_in_service_hours >= 0");
                    table.ForeignKey(
                        name: "fk_removals_locations_location",
                        column: x => x.location,
                        principalTable: "locations",
                        principalColumn: "path",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_removals_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "retractions",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_retractions", x => x.record_id);
                    table.CheckConstraint("ck_retractions_reason", "char_length(reason) between 0 and 2000");
                    table.ForeignKey(
                        name: "fk_retractions_records_record_id",
                        column: x => x.record_id,
                        principalTable: "records",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "assignments",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    from_date = table.Column<DateOnly>(type: "date", nullable: false),
                    @base = table.Column<string>(name: "base", type: "text", nullable: false, collation: "C"),
                    type_group_id = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_assignments", x => new { x.record_id, x.from_date });
                    table.CheckConstraint("ck_assignments_base", "char_length(base) between 1 and 60");
                    table.CheckConstraint("ck_assignments_from_date", "from_date between date '1900-01-01' and date '2199-12-31'");
                    table.ForeignKey(
                        name: "fk_assignments_airframes_record_id",
                        column: x => x.record_id,
                        principalTable: "airframes",
                        principalColumn: "record_id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_assignments_type_groups_type_group_id",
                        column: x => x.type_group_id,
                        principalTable: "type_groups",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "location_looks",
                columns: table => new
                {
                    record_id = table.Column<long>(type: "bigint", nullable: false),
                    location = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    state = table.Column<short>(type: "smallint", nullable: false),
                    method = table.Column<short>(type: "smallint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_location_looks", x => new { x.record_id, x.location });
                    table.CheckConstraint("ck_location_looks_method", "method between 0 and 7");
                    table.CheckConstraint("ck_location_looks_state", "state between 1 and 3");
                    table.ForeignKey(
                        name: "fk_location_looks_inspections_record_id",
                        column: x => x.record_id,
                        principalTable: "inspections",
                        principalColumn: "record_id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_location_looks_locations_location",
                        column: x => x.location,
                        principalTable: "locations",
                        principalColumn: "path",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_aircraft_registration",
                table: "aircraft",
                column: "registration",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_flags_subject",
                table: "flags",
                column: "subject",
                unique: true,
                filter: "state <> 3");

            migrationBuilder.CreateIndex(
                name: "ix_flags_subject_id",
                table: "flags",
                columns: new[] { "subject", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_layout_locations_layout_id_position",
                table: "layout_locations",
                columns: new[] { "layout_id", "position" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_layouts_name",
                table: "layouts",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_outbox_mails_message_id",
                table: "outbox_mails",
                column: "message_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_outbox_mails_next_attempt_time",
                table: "outbox_mails",
                column: "next_attempt_time",
                filter: "sent_time is null");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_mails_report_id_recipient",
                table: "outbox_mails",
                columns: new[] { "report_id", "recipient" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_records_aircraft_id_kind",
                table: "records",
                columns: new[] { "aircraft_id", "kind" });

            migrationBuilder.CreateIndex(
                name: "ix_records_source_id_source_record_id_revision",
                table: "records",
                columns: new[] { "source_id", "source_record_id", "revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_records_source_id_source_record_id_revision_accept_time",
                table: "records",
                columns: new[] { "source_id", "source_record_id", "revision", "accept_time" },
                filter: "revision > 1");

            migrationBuilder.CreateIndex(
                name: "ix_refresh_requests_request_time",
                table: "refresh_requests",
                column: "request_time");

            migrationBuilder.CreateIndex(
                name: "ix_reports_base_period_start_date_period_end_date",
                table: "reports",
                columns: new[] { "base", "period_start_date", "period_end_date" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_sources_name",
                table: "sources",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_type_groups_name",
                table: "type_groups",
                column: "name",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "actions");

            migrationBuilder.DropTable(
                name: "assignments");

            migrationBuilder.DropTable(
                name: "findings");

            migrationBuilder.DropTable(
                name: "flags");

            migrationBuilder.DropTable(
                name: "installations");

            migrationBuilder.DropTable(
                name: "knowledge");

            migrationBuilder.DropTable(
                name: "layout_locations");

            migrationBuilder.DropTable(
                name: "location_looks");

            migrationBuilder.DropTable(
                name: "meter_changes");

            migrationBuilder.DropTable(
                name: "meter_readings");

            migrationBuilder.DropTable(
                name: "outbox_mails");

            migrationBuilder.DropTable(
                name: "recipients");

            migrationBuilder.DropTable(
                name: "refresh_requests");

            migrationBuilder.DropTable(
                name: "removals");

            migrationBuilder.DropTable(
                name: "report_plots");

            migrationBuilder.DropTable(
                name: "report_requests");

            migrationBuilder.DropTable(
                name: "retractions");

            migrationBuilder.DropTable(
                name: "snapshots");

            migrationBuilder.DropTable(
                name: "airframes");

            migrationBuilder.DropTable(
                name: "type_groups");

            migrationBuilder.DropTable(
                name: "inspections");

            migrationBuilder.DropTable(
                name: "locations");

            migrationBuilder.DropTable(
                name: "reports");

            migrationBuilder.DropTable(
                name: "layouts");

            migrationBuilder.DropTable(
                name: "records");

            migrationBuilder.DropTable(
                name: "aircraft");

            migrationBuilder.DropTable(
                name: "sources");
        }
    }
}
