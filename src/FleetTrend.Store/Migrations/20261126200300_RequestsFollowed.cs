using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FleetTrend.Store.Migrations
{
    /// <inheritdoc />
    public partial class RequestsFollowed : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "attempt_count",
                table: "report_requests",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "failure",
                table: "report_requests",
                type: "text",
                nullable: true,
                collation: "C");

            migrationBuilder.AddColumn<DateOnly>(
                name: "period_end_date",
                table: "report_requests",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "period_start_date",
                table: "report_requests",
                type: "date",
                nullable: true);

            // Earlier requests did not say their period: the seven days that ended on their day. The schedule's time zone is not known here.
            migrationBuilder.Sql(
                """
                update report_requests
                set period_start_date = (request_time at time zone 'UTC')::date - 6, period_end_date = (request_time at time zone 'UTC')::date;
                alter table report_requests alter column period_start_date set not null, alter column period_end_date set not null;
                """);

            migrationBuilder.AddColumn<DateTimeOffset>(
                name: "failed_time",
                table: "refresh_requests",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddCheckConstraint(
                name: "ck_report_requests_period",
                table: "report_requests",
                sql: "period_start_date <= period_end_date");

            migrationBuilder.AddCheckConstraint(
                name: "ck_report_requests_period_end_date",
                table: "report_requests",
                sql: "period_end_date between date '1900-01-01' and date '2199-12-31'");

            migrationBuilder.AddCheckConstraint(
                name: "ck_report_requests_period_start_date",
                table: "report_requests",
                sql: "period_start_date between date '1900-01-01' and date '2199-12-31'");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_report_requests_period",
                table: "report_requests");

            migrationBuilder.DropCheckConstraint(
                name: "ck_report_requests_period_end_date",
                table: "report_requests");

            migrationBuilder.DropCheckConstraint(
                name: "ck_report_requests_period_start_date",
                table: "report_requests");

            migrationBuilder.DropColumn(
                name: "attempt_count",
                table: "report_requests");

            migrationBuilder.DropColumn(
                name: "failure",
                table: "report_requests");

            migrationBuilder.DropColumn(
                name: "period_end_date",
                table: "report_requests");

            migrationBuilder.DropColumn(
                name: "period_start_date",
                table: "report_requests");

            migrationBuilder.DropColumn(
                name: "failed_time",
                table: "refresh_requests");
        }
    }
}
