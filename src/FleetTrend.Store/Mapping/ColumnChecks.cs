using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FleetTrend.Store.Mapping;

/// <summary>The checks that many tables share, said once.</summary>
internal static class ColumnChecks
{
    /// <summary>Hours with one decimal, never negative.</summary>
    public static void Hours<T>(this TableBuilder<T> table, string column)
        where T : class =>
        table.HasCheckConstraint($"ck_{table.Name}_{column}", $"{column} >= 0");

    /// <summary>A day that an aircraft of today can have in its papers.</summary>
    public static void Day<T>(this TableBuilder<T> table, string column)
        where T : class =>
        table.HasCheckConstraint($"ck_{table.Name}_{column}", $"{column} between date '1900-01-01' and date '2199-12-31'");

    /// <summary>A code of a closed list, both ends included.</summary>
    public static void Code<T>(this TableBuilder<T> table, string column, int first, int last)
        where T : class =>
        table.HasCheckConstraint($"ck_{table.Name}_{column}", $"{column} between {first} and {last}");

    /// <summary>Text of a length in characters, both ends included.</summary>
    public static void Length<T>(this TableBuilder<T> table, string column, int least, int most)
        where T : class =>
        table.HasCheckConstraint($"ck_{table.Name}_{column}", $"char_length({column}) between {least} and {most}");

    /// <summary>Text of a form, as a regular expression that is anchored here.</summary>
    public static void Form<T>(this TableBuilder<T> table, string column, string pattern)
        where T : class =>
        table.HasCheckConstraint($"ck_{table.Name}_{column}", $"{column} ~ '^{pattern}$'");
}
