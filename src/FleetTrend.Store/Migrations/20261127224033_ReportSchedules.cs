using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class ReportSchedules : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_reports_base_period_start_date_period_end_date",
                table: "reports");

            migrationBuilder.AddColumn<string>(
                name: "type_group",
                table: "reports",
                type: "text",
                nullable: true,
                collation: "C");

            migrationBuilder.CreateTable(
                name: "report_deliveries",
                columns: table => new
                {
                    report_id = table.Column<long>(type: "bigint", nullable: false),
                    recipient = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_report_deliveries", x => new { x.report_id, x.recipient });
                    table.CheckConstraint("ck_report_deliveries_recipient", "char_length(recipient) between 3 and 320");
                    table.ForeignKey(
                        name: "fk_report_deliveries_reports_report_id",
                        column: x => x.report_id,
                        principalTable: "reports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "report_schedules",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    @base = table.Column<string>(name: "base", type: "text", nullable: false, collation: "C"),
                    type_group = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    day_of_week = table.Column<int>(type: "integer", nullable: false),
                    local_time = table.Column<TimeOnly>(type: "time without time zone", nullable: false),
                    time_zone = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    follows_settings = table.Column<bool>(type: "boolean", nullable: false),
                    is_paused = table.Column<bool>(type: "boolean", nullable: false),
                    next_due_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    last_due_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    last_made_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    last_report_id = table.Column<long>(type: "bigint", nullable: true),
                    send_asked_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    retry_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    failure = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    remove_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_report_schedules", x => x.id);
                    table.CheckConstraint("ck_report_schedules_base", "char_length(base) between 1 and 60");
                    table.CheckConstraint("ck_report_schedules_day_of_week", "day_of_week between 0 and 6");
                    table.CheckConstraint("ck_report_schedules_name", "char_length(name) between 1 and 80");
                    table.CheckConstraint("ck_report_schedules_scope", "base = '*' or type_group is null");
                    table.CheckConstraint("ck_report_schedules_time_zone", "char_length(time_zone) between 1 and 60");
                    table.ForeignKey(
                        name: "fk_report_schedules_reports_last_report_id",
                        column: x => x.last_report_id,
                        principalTable: "reports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "schedule_recipients",
                columns: table => new
                {
                    schedule_id = table.Column<long>(type: "bigint", nullable: false),
                    address = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_schedule_recipients", x => new { x.schedule_id, x.address });
                    table.CheckConstraint("ck_schedule_recipients_address", "char_length(address) between 3 and 320");
                    table.ForeignKey(
                        name: "fk_schedule_recipients_report_schedules_schedule_id",
                        column: x => x.schedule_id,
                        principalTable: "report_schedules",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_reports_base_type_group_period_start_date_period_end_date",
                table: "reports",
                columns: new[] { "base", "type_group", "period_start_date", "period_end_date" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_report_schedules_name",
                table: "report_schedules",
                column: "name",
                unique: true,
                filter: "remove_time is null");

            // Who got a report goes on getting it: by the slot of the settings, which a worker fills in. Bases that lately had a report keep it too.
            migrationBuilder.Sql(
                """
                insert into report_schedules (name, base, day_of_week, local_time, time_zone, follows_settings, is_paused, last_report_id)
                select case when base = '*' then 'Whole fleet' else 'Base ' || base end, base, 1, time '06:00', 'UTC', true, false,
                       (select id from reports where reports.base = known.base order by period_end_date desc, id desc limit 1)
                from (
                    select base from recipients
                    union
                    select base from reports where period_end_date > current_date - 15) known;
                insert into schedule_recipients (schedule_id, address)
                select schedule.id, recipients.address from recipients join report_schedules schedule on schedule.base = recipients.base;
                insert into report_deliveries (report_id, recipient) select distinct report_id, lower(recipient) from outbox_mails;
                """);

            migrationBuilder.DropTable(
                name: "recipients");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
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

            migrationBuilder.Sql(
                """
                insert into recipients (base, address)
                select distinct schedule.base, recipient.address
                from schedule_recipients recipient join report_schedules schedule on schedule.id = recipient.schedule_id
                where schedule.type_group is null and schedule.remove_time is null;
                delete from outbox_mails using reports where reports.id = outbox_mails.report_id and reports.type_group is not null;
                update report_schedules set last_report_id = null;
                delete from report_plots using reports where reports.id = report_plots.report_id and reports.type_group is not null;
                delete from report_deliveries;
                delete from reports where type_group is not null;
                """);

            migrationBuilder.DropTable(
                name: "report_deliveries");

            migrationBuilder.DropTable(
                name: "schedule_recipients");

            migrationBuilder.DropTable(
                name: "report_schedules");

            migrationBuilder.DropIndex(
                name: "ix_reports_base_type_group_period_start_date_period_end_date",
                table: "reports");

            migrationBuilder.DropColumn(
                name: "type_group",
                table: "reports");

            migrationBuilder.CreateIndex(
                name: "ix_reports_base_period_start_date_period_end_date",
                table: "reports",
                columns: new[] { "base", "period_start_date", "period_end_date" },
                unique: true);
        }
    }
}
