using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class LifeOfAFlag : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_flags_subject",
                table: "flags");

            migrationBuilder.DropCheckConstraint(
                name: "ck_flags_answer",
                table: "flags");

            migrationBuilder.DropCheckConstraint(
                name: "ck_flags_state",
                table: "flags");

            migrationBuilder.AddColumn<DateOnly>(
                name: "action_date",
                table: "flags",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "assignee",
                table: "flags",
                type: "text",
                nullable: true,
                collation: "C");

            migrationBuilder.AddColumn<DateTimeOffset>(
                name: "state_time",
                table: "flags",
                type: "timestamp with time zone",
                nullable: false,
                defaultValueSql: "now()");

            migrationBuilder.AddColumn<short>(
                name: "tier",
                table: "flags",
                type: "smallint",
                nullable: false,
                defaultValue: (short)2);

            migrationBuilder.AddColumn<int>(
                name: "version",
                table: "flags",
                type: "integer",
                nullable: false,
                defaultValue: 1);

            migrationBuilder.CreateTable(
                name: "flag_steps",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    flag_id = table.Column<long>(type: "bigint", nullable: false),
                    state = table.Column<short>(type: "smallint", nullable: false),
                    step_time = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    step_by = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    note = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    action_date = table.Column<DateOnly>(type: "date", nullable: true),
                    action_time_in_service_hours = table.Column<decimal>(type: "numeric(9,1)", precision: 9, scale: 1, nullable: true),
                    assignee = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_flag_steps", x => x.id);
                    table.CheckConstraint("ck_flag_steps_action_date", "state <> 5 or action_date is not null");
                    table.CheckConstraint("ck_flag_steps_action_time_in_service_hours", "action_time_in_service_hours >= 0");
                    table.CheckConstraint("ck_flag_steps_state", "state between 1 and 8");
                    table.CheckConstraint("ck_flag_steps_step_by", "state not in (2, 3, 5, 8) or step_by is not null");
                    table.ForeignKey(
                        name: "fk_flag_steps_flags_flag_id",
                        column: x => x.flag_id,
                        principalTable: "flags",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            // What was known of the flags that are there: when each was raised, and the last answer.
            migrationBuilder.Sql(
                """
                update flags set state_time = coalesce(answer_time, raise_time), version = case when answered_by is null then 1 else 2 end;
                insert into flag_steps (flag_id, state, step_time, note) select id, 1, raise_time, '' from flags order by id;
                insert into flag_steps (flag_id, state, step_time, step_by, note)
                select id, state, answer_time, answered_by, coalesce(answer, '') from flags where answered_by is not null order by id;
                """);

            migrationBuilder.CreateIndex(
                name: "ix_flags_subject",
                table: "flags",
                column: "subject",
                unique: true,
                filter: "state not in (3, 6)");

            migrationBuilder.AddCheckConstraint(
                name: "ck_flags_answer",
                table: "flags",
                sql: "(answered_by is null) = (answer_time is null) and (answered_by is not null or state in (1, 4))");

            migrationBuilder.AddCheckConstraint(
                name: "ck_flags_state",
                table: "flags",
                sql: "state between 1 and 8");

            migrationBuilder.AddCheckConstraint(
                name: "ck_flags_tier",
                table: "flags",
                sql: "tier between 1 and 2");

            migrationBuilder.CreateIndex(
                name: "ix_flag_steps_flag_id_id",
                table: "flag_steps",
                columns: new[] { "flag_id", "id" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "flag_steps");

            migrationBuilder.DropIndex(
                name: "ix_flags_subject",
                table: "flags");

            migrationBuilder.DropCheckConstraint(
                name: "ck_flags_answer",
                table: "flags");

            migrationBuilder.DropCheckConstraint(
                name: "ck_flags_state",
                table: "flags");

            migrationBuilder.DropCheckConstraint(
                name: "ck_flags_tier",
                table: "flags");

            migrationBuilder.DropColumn(
                name: "action_date",
                table: "flags");

            migrationBuilder.DropColumn(
                name: "assignee",
                table: "flags");

            migrationBuilder.DropColumn(
                name: "state_time",
                table: "flags");

            migrationBuilder.DropColumn(
                name: "tier",
                table: "flags");

            migrationBuilder.DropColumn(
                name: "version",
                table: "flags");

            migrationBuilder.Sql("update flags set state = case when state in (3, 6) then 3 when answered_by is null then 1 else 2 end");

            migrationBuilder.CreateIndex(
                name: "ix_flags_subject",
                table: "flags",
                column: "subject",
                unique: true,
                filter: "state <> 3");

            migrationBuilder.AddCheckConstraint(
                name: "ck_flags_answer",
                table: "flags",
                sql: "(state = 1) = (answered_by is null) and (state = 1) = (answer_time is null)");

            migrationBuilder.AddCheckConstraint(
                name: "ck_flags_state",
                table: "flags",
                sql: "state between 1 and 3");
        }
    }
}
